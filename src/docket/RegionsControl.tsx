import { useView } from '../store/hooks.ts';
import styles from './Controls.module.css';
import type { ControlProps } from './control.ts';
import shared from './Docket.module.css';
import type { PlainField } from './fields.ts';
import { strings } from './strings.ts';

const texts = strings.regions;

/** Whole regions: those chosen on the print are taken, or none. */
export function RegionsControl({ value, describedBy, commit }: ControlProps<PlainField>) {
  const chosen = useView((state) => state.chosen);
  const count = Array.isArray(value) ? value.length : 0;
  return (
    <span className={styles.byHand}>
      <span>{count > 0 ? texts.count(count) : texts.none}</span>
      {chosen.length > 0 && (
        <button
          type="button"
          className={shared.word}
          aria-describedby={describedBy}
          onClick={() => commit([...chosen], texts.words(chosen.length))}
        >
          {texts.take(chosen.length)}
        </button>
      )}
      {count > 0 && (
        <button
          type="button"
          className={shared.word}
          aria-describedby={describedBy}
          onClick={() => commit(undefined, texts.clear)}
        >
          {texts.clear}
        </button>
      )}
    </span>
  );
}
