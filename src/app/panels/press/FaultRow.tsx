import type { Complaint } from '../../../graph/complaint.ts';
import { showPlace } from '../../../view/desk-store.ts';
import { pointOf } from '../../../view/region-tools/marks.ts';
import styles from '../regions/Regions.module.css';
import own from './Press.module.css';
import { markMeant, unmarkMeant } from './press-edits.ts';
import { pressTexts as texts } from './strings.ts';

/** So much is shown round a fault, mm. */
const SPAN_MM = 24;

/** One fault: click shows its place; a word beside it says that it is meant. */
export function FaultRow({ fault, meant }: { fault: Complaint; meant: boolean }) {
  const { message, placeMm } = fault;
  return (
    <li className={own.fault}>
      {placeMm ? (
        <button
          type="button"
          className={styles.name}
          title={texts.goTo}
          onClick={() => showPlace(pointOf(placeMm), SPAN_MM)}
        >
          {message}
        </button>
      ) : (
        <p className={styles.name}>{message}</p>
      )}
      <button
        type="button"
        className={styles.word}
        aria-label={meant ? texts.unmarkHelp(message) : texts.markHelp(message)}
        onClick={() => (meant ? unmarkMeant(fault) : markMeant(fault))}
      >
        {meant ? texts.unmark : texts.mark}
      </button>
    </li>
  );
}
