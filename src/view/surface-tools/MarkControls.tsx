import { useState } from 'react';
import { NewName } from '../../docket/NewName.tsx';
import { NumberInput } from '../../docket/NumberInput.tsx';
import { strings as docketStrings } from '../../docket/strings.ts';
import { withKept } from '../../graph/kept-settings.ts';
import type { Preset } from '../../graph/node-kind.ts';
import { handMarks, MARK_DOES, MARK_EDGES } from '../../nodes/hand-marks.ts';
import { marksAtHand, marksOf, withMarks } from '../../store/hand-marks.ts';
import { useJob, useView } from '../../store/hooks.ts';
import { edit } from '../../store/job-store.ts';
import { figureField } from './figure-field.ts';
import { PlatesChoice } from './PlatesChoice.tsx';
import styles from './SurfaceRow.module.css';
import { surfaceTexts } from './strings.ts';
import { type Brush, surfaceStore, useSurface } from './surface-store.ts';

const texts = surfaceTexts.marks;
const keptTexts = docketStrings.kept;
const TINT = figureField(texts.tint, texts.tintHelp, '%', [0, 100, 100]);
const WIDTH = figureField(texts.width, texts.widthHelp, 'mm', [0.05, 100, 1.5]);

type Drawn = Omit<Brush, 'plates'>;

const isBrush = (settings: Preset['settings'], drawn: Drawn) =>
  Object.entries(drawn).every(([name, value]) => settings[name] === value);

/** Keeps a brush under a name. */
function KeepBrush({ drawn }: { drawn: Drawn }) {
  const [names, setNames] = useState(false);
  const keep = (name: string) =>
    edit(keptTexts.keepStep(name), (job) =>
      withKept(job, { kind: handMarks.kind, name, settings: { ...drawn } }),
    );
  if (names) return <NewName onKeep={keep} onEnd={() => setNames(false)} />;
  return (
    <button type="button" className={styles.action} onClick={() => setNames(true)}>
      {texts.keepBrush}
    </button>
  );
}

/** What strokes are drawn with; while one is chosen, how that one was drawn. */
export function MarkControls() {
  const chosen = useSurface((state) => state.chosen);
  const chosenNode = useView((state) => state.node);
  const node = useJob((job) => marksAtHand(job, chosenNode));
  const brush = useSurface((state) => state.brush);
  const mark = node && marksOf(node).find(({ id }) => id === chosen);
  const { does, plates, tintPercent, widthMm, edge }: Brush = mark ?? brush;
  const own = useJob((job) => job.kept);
  const kept: readonly Preset[] = [
    ...(own ?? []).filter(({ kind }) => kind === handMarks.kind).map((each) => ({ ...each, help: '' })),
    ...handMarks.presets!.list,
  ];
  const drawn: Drawn = { does, tintPercent, widthMm, edge };
  const at = kept.findIndex(({ settings }) => isBrush(settings, drawn));
  const set = (change: Partial<Brush>, gesture: string | null = null) => {
    if (!mark) surfaceStore.setState({ brush: { ...brush, ...change } });
    else
      edit(
        texts.steps.change,
        (job) =>
          withMarks(job, node.id, (all) =>
            all.map((each) => (each === mark ? { ...each, ...change } : each)),
          ),
        gesture,
      );
    return null;
  };
  return (
    <>
      {mark && <span className={styles.note}>{texts.ofMark}</span>}
      <select
        aria-label={texts.brush}
        value={at}
        onChange={({ target }) => set(kept[Number(target.value)]!.settings as Partial<Brush>)}
      >
        <option value={-1} disabled>
          {texts.noBrush}
        </option>
        {kept.map(({ name, help }, i) => (
          <option key={name} value={i} title={help}>
            {name}
          </option>
        ))}
      </select>
      <select
        aria-label={texts.does}
        title={texts.doesHelp[does]}
        value={does}
        onChange={({ target }) => set({ does: target.value as Brush['does'] })}
      >
        {MARK_DOES.map((each) => (
          <option key={each} value={each}>
            {texts.doesWords[each]}
          </option>
        ))}
      </select>
      <span className={styles.named}>
        <span aria-hidden="true">{texts.tint}</span>
        <NumberInput
          field={TINT}
          label={texts.tint}
          value={tintPercent}
          commit={(value, _, gesture) => set({ tintPercent: value ?? 100 }, gesture)}
        />
      </span>
      <span className={styles.named}>
        <span aria-hidden="true">{texts.width}</span>
        <NumberInput
          field={WIDTH}
          label={texts.width}
          value={widthMm}
          commit={(value, _, gesture) => set({ widthMm: value ?? 1.5 }, gesture)}
        />
      </span>
      <select
        aria-label={texts.edge}
        value={edge}
        onChange={({ target }) => set({ edge: target.value as Brush['edge'] })}
      >
        {MARK_EDGES.map((each) => (
          <option key={each} value={each}>
            {texts.edgeWords[each]}
          </option>
        ))}
      </select>
      {at < 0 && !mark && <KeepBrush drawn={drawn} />}
      <PlatesChoice value={plates} onChange={(next) => set({ plates: next })} />
    </>
  );
}
