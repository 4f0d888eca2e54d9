import { useView } from '../../store/hooks.ts';
import { focusPrint } from '../desk-store.ts';
import styles from './RegionToolRow.module.css';
import { regionTexts as texts } from './strings.ts';
import { dropUnfinished, finishUnfinished, useUnfinished } from './unfinished-store.ts';

/** What can be done with a path that waits for more corners: a finger has no Escape. */
export function Begun() {
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
        <button
          type="button"
          disabled={begun.points.length < (begun.least ?? 2)}
          onClick={then(finishUnfinished)}
        >
          {texts.finish}
        </button>
      )}
      <button type="button" onClick={then(dropUnfinished)}>
        {texts.drop}
      </button>
    </span>
  );
}
