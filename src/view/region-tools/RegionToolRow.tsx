import { useView } from '../../store/hooks.ts';
import { focusPrint } from '../desk-store.ts';
import foot from '../FootControls.module.css';
import { ToolButton } from '../ToolButton.tsx';
import styles from './RegionToolRow.module.css';
import { regionTools, useRegionsShow } from './region-tools.ts';
import { regionTexts as texts } from './strings.ts';
import { dropUnfinished, finishUnfinished, useUnfinished } from './unfinished-store.ts';

/** What can be done with a path that waits for more corners: a finger has no Escape. */
function Begun() {
  const tool = useView((state) => state.tool);
  const begun = useUnfinished();
  const drags = useView((state) => state.handMoves);
  if (begun?.tool !== tool || drags) return null;
  const then = (act: () => void) => () => {
    act();
    focusPrint();
  };
  return (
    <span className={styles.begun}>
      {begun.finish && (
        <button type="button" disabled={begun.points.length < 2} onClick={then(finishUnfinished)}>
          {texts.finish}
        </button>
      )}
      <button type="button" onClick={then(dropUnfinished)}>
        {texts.drop}
      </button>
    </span>
  );
}

/** The tools that choose and mend regions, while regions are worked at. */
export function RegionToolRow() {
  if (!useRegionsShow()) return null;
  return (
    <div className={styles.row}>
      <fieldset className={foot.group} aria-label={texts.label}>
        {regionTools.map((tool) => (
          <ToolButton key={tool.id} tool={tool} />
        ))}
        <Begun />
      </fieldset>
    </div>
  );
}
