import { useJob, useView } from '../../store/hooks.ts';
import { edit } from '../../store/job-store.ts';
import styles from './Colourways.module.css';
import { colourwayTexts } from './strings.ts';

const texts = colourwayTexts.proposals;

/** Regions that stay as they print, whatever is proposed. */
export function Pins() {
  const pins = useJob((job) => job.pins);
  const chosen = useView((state) => state.chosen);
  const fresh = chosen.filter((id) => !pins.includes(id));
  return (
    <div>
      <p className={styles.quiet}>{texts.pins(pins.length)}</p>
      {fresh.length > 0 && (
        <button
          type="button"
          className={styles.word}
          onClick={() => edit(texts.steps.pin, (job) => ({ ...job, pins: [...job.pins, ...fresh] }))}
        >
          {texts.pinChosen(fresh.length)}
        </button>
      )}
      {pins.length > 0 && (
        <button
          type="button"
          className={styles.word}
          onClick={() => edit(texts.steps.unpin, (job) => ({ ...job, pins: [] }))}
        >
          {texts.unpinAll}
        </button>
      )}
    </div>
  );
}
