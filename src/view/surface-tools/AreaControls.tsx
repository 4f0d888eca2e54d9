import { useState } from 'react';
import { NumberInput } from '../../docket/NumberInput.tsx';
import type { Job } from '../../graph/job.ts';
import { nodeKinds } from '../../nodes/registry.ts';
import { areaAtHand, areaNodes, areaTargets, keptBy, withArea } from '../../store/areas.ts';
import { useJob, useView } from '../../store/hooks.ts';
import { edit, jobStore } from '../../store/job-store.ts';
import { setView } from '../../store/view-store.ts';
import { focusPrint } from '../desk-store.ts';
import { say } from '../said-store.ts';
import { figureField } from './figure-field.ts';
import styles from './SurfaceRow.module.css';
import { surfaceTexts } from './strings.ts';
import { surfaceStore, useSurface } from './surface-store.ts';

const texts = surfaceTexts.areas;
const NEAR = figureField(texts.near, texts.nearHelp, 'mm', [0.1, 200, 3]);

const titleOf = (job: Job, id: string) =>
  nodeKinds.get(job.graph.nodes.find((node) => node.id === id)?.kind ?? '')?.title ?? id;

/** Makes an area that a step keeps to, and says how it is wired. */
function make(target: string): void {
  const { job } = jobStore.getState();
  const made = job && withArea(job, target);
  if (!job || !made) {
    say(texts.noRegions);
    return;
  }
  const title = titleOf(job, target);
  edit(texts.step(title), () => made.job);
  setView({ node: made.node });
  surfaceStore.setState({ chosen: null });
  say(texts.made(title));
  focusPrint();
}

/** A step to keep to a new area, and the button that makes it. */
function NewArea({ onMade }: { onMade(): void }) {
  const job = useJob((state) => state);
  const targets = areaTargets(job);
  const [wanted, setWanted] = useState<string | null>(null);
  const target = targets.find(({ id }) => id === wanted) ?? targets[0];
  if (!target) return <span className={styles.note}>{texts.noTarget}</span>;
  return (
    <>
      <label className={styles.named}>
        <span>{texts.forLabel}</span>
        <select value={target.id} onChange={(event) => setWanted(event.target.value)}>
          {targets.map(({ id }) => (
            <option key={id} value={id}>
              {titleOf(job, id)}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        className={styles.action}
        onClick={() => {
          make(target.id);
          onMade();
        }}
      >
        {texts.add}
      </button>
    </>
  );
}

/** Which area is worked at, and a way to make one. */
export function AreaControls() {
  const job = useJob((state) => state);
  const node = useView((state) => state.node);
  const tool = useView((state) => state.tool);
  const nearMm = useSurface((state) => state.nearMm);
  const [adds, setAdds] = useState(false);
  const areas = areaNodes(job);
  const area = areaAtHand(job, node);
  if (!area || adds)
    return (
      <>
        {!area && <span className={styles.note}>{texts.noArea}</span>}
        <NewArea onMade={() => setAdds(false)} />
      </>
    );
  return (
    <>
      <label className={styles.named}>
        <span>{texts.which}</span>
        <select value={area.id} onChange={({ target }) => setView({ node: target.value })}>
          {areas.map(({ id }) => (
            <option key={id} value={id}>
              {texts.of(keptBy(job, id).map((each) => titleOf(job, each.id)))}
            </option>
          ))}
        </select>
      </label>
      <button type="button" className={styles.action} onClick={() => setAdds(true)}>
        {texts.another}
      </button>
      {tool === 'area-line' && (
        <span className={styles.named}>
          <span aria-hidden="true">{texts.near}</span>
          <NumberInput
            field={NEAR}
            label={texts.near}
            value={nearMm}
            commit={(value) => {
              if (value !== null) surfaceStore.setState({ nearMm: value });
              return null;
            }}
          />
        </span>
      )}
    </>
  );
}
