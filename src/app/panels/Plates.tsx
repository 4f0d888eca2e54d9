import { useMemo } from 'react';
import { deliveredInkSet } from '../../docket/ink-edits.ts';
import { strings } from '../../docket/strings.ts';
import { platesOf } from '../../docket/use-plates.ts';
import { useJob } from '../../store/hooks.ts';
import { setView } from '../../store/view-store.ts';
import { inkTexts } from '../inks/strings.ts';
import { PlateItem } from './PlateItem.tsx';
import styles from './Plates.module.css';

/** The plates in print order. */
export function Plates() {
  const set = useJob((job) => deliveredInkSet(job.graph));
  const plates = useMemo(() => platesOf(set), [set]);
  return (
    <div className={styles.plates}>
      <header className={styles.head}>
        <h2>{strings.panel.heading}</h2>
        <span>{plates.length}</span>
      </header>
      {plates.length === 0 && <p className={styles.quiet}>{strings.panel.none}</p>}
      <ol className={styles.list}>
        {plates.map((plate) => (
          <PlateItem key={plate.id} plate={plate} of={plates.length} set={set!.id} />
        ))}
      </ol>
      <button
        type="button"
        className={styles.shelf}
        onClick={() => setView({ sheet: 'inks', wiringOpen: false })}
      >
        {inkTexts.open}
      </button>
    </div>
  );
}
