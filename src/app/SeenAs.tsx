import { useView } from '../store/hooks.ts';
import { setView } from '../store/view-store.ts';
import styles from './App.module.css';
import { chartTexts } from './chart/strings.ts';

/** Says so while the window is shown to other eyes, and leads back. */
export function SeenAs() {
  const eyes = useView((state) => state.eyes);
  if (eyes === 'usual') return null;
  return (
    <p className={styles.status}>
      {chartTexts.seenAs(chartTexts.eyes[eyes])}{' '}
      <button type="button" className={styles.action} onClick={() => setView({ eyes: 'usual' })}>
        {chartTexts.usualAgain}
      </button>
    </p>
  );
}
