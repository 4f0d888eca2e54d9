import { type ComponentType, useState } from 'react';
import foot from '../FootControls.module.css';
import { Begun } from '../region-tools/Begun.tsx';
import { ToolButton } from '../ToolButton.tsx';
import { takeTool } from '../tools.ts';
import { AreaControls } from './AreaControls.tsx';
import { FadeControls } from './FadeControls.tsx';
import { MarkControls } from './MarkControls.tsx';
import { NudgeControls } from './NudgeControls.tsx';
import styles from './SurfaceRow.module.css';
import { surfaceTexts as texts } from './strings.ts';
import { useSurface } from './surface-store.ts';
import { surfaceSets, toolsOf } from './surface-tools.ts';
import { removeChosen } from './thing-edits.ts';
import { type SurfaceSet, useThings } from './things.ts';

const CONTROLS: Readonly<Record<SurfaceSet, ComponentType>> = {
  areas: AreaControls,
  marks: MarkControls,
  fades: FadeControls,
  nudge: NudgeControls,
};

function ChosenThing({ set }: { set: SurfaceSet }) {
  const things = useThings(set);
  const chosen = useSurface((state) => state.chosen);
  if (!things.some(({ key }) => key === chosen)) return null;
  return (
    <button type="button" className={styles.action} onClick={() => removeChosen(set)}>
      {texts.remove}
    </button>
  );
}

/** The tools for what lies over the regions, with their settings; these fold away where there is no room. */
export function SurfaceRow({ set }: { set: SurfaceSet }) {
  const [open, setOpen] = useState(false);
  const Controls = CONTROLS[set];
  return (
    <div className={`${styles.row} ${set === 'nudge' ? '' : styles.folds}`}>
      <div className={styles.line}>
        <select
          className={styles.set}
          aria-label={texts.setsLabel}
          title={texts.sets[set].help}
          value={set}
          onChange={({ target }) => takeTool(toolsOf(target.value as SurfaceSet)[0])}
        >
          {surfaceSets.map((each) => (
            <option key={each} value={each}>
              {texts.sets[each].title}
            </option>
          ))}
        </select>
        <fieldset className={foot.group} aria-label={texts.label(texts.sets[set].title)}>
          {toolsOf(set).map((tool) => (
            <ToolButton key={tool.id} tool={tool} />
          ))}
          <Begun />
        </fieldset>
        <ChosenThing set={set} />
        <button
          type="button"
          className={styles.fold}
          aria-expanded={open}
          aria-label={texts.settingsOf(texts.sets[set].title)}
          onClick={() => setOpen(!open)}
        >
          {texts.settings}
        </button>
        <fieldset
          className={styles.controls}
          data-open={open}
          aria-label={texts.settingsOf(texts.sets[set].title)}
        >
          <Controls />
        </fieldset>
      </div>
    </div>
  );
}
