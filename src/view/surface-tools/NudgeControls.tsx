import { useJob } from '../../store/hooks.ts';
import { offsetOf, registerNode } from '../../store/nudge.ts';
import { platesOf } from '../plates-of.ts';
import { backIntoRegister, plateAtHand } from './nudge-tool.ts';
import styles from './SurfaceRow.module.css';
import { surfaceTexts } from './strings.ts';
import { surfaceStore, useSurface } from './surface-store.ts';

const texts = surfaceTexts.nudge;

/** Which plate is nudged, how far off it stands, and the way back. */
export function NudgeControls() {
  const job = useJob((state) => state);
  const chosen = useSurface((state) => state.plate);
  const plates = platesOf(job);
  const plate = plateAtHand(plates, chosen);
  const node = registerNode(job);
  if (!plate) return null;
  const { alongMm, acrossMm } = node ? offsetOf(node, plate.id) : { alongMm: 0, acrossMm: 0 };
  const still = alongMm === 0 && acrossMm === 0;
  return (
    <>
      <label className={styles.named}>
        <span>{texts.plate}</span>
        <select value={plate.id} onChange={({ target }) => surfaceStore.setState({ plate: target.value })}>
          {plates.map(({ id, ink }) => (
            <option key={id} value={id}>
              {ink}
            </option>
          ))}
        </select>
      </label>
      <output className={styles.readout}>{texts.readout(alongMm, acrossMm)}</output>
      <button
        type="button"
        className={styles.action}
        disabled={still}
        onClick={() => backIntoRegister(plate)}
      >
        {texts.back}
      </button>
    </>
  );
}
