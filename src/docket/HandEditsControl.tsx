import { setView, type ViewState } from '../store/view-store.ts';
import styles from './Controls.module.css';
import type { ControlProps } from './control.ts';
import shared from './Docket.module.css';
import type { PlainField } from './fields.ts';
import { strings } from './strings.ts';

const texts = strings.byHand;

/** What shows each list on the print: the regions themselves, or the tool that chooses from it. */
const SHOWN: Readonly<Record<string, Partial<ViewState>>> = {
  edits: { showing: { view: 'regions' } },
  pairs: { showing: { view: 'slack' } },
  shapes: { tool: 'choose-areas' },
  lines: { tool: 'choose-areas' },
  marks: { tool: 'choose-marks' },
};

/** How much was done by hand, a way to see it on the print, and a way to have none of it. */
export function HandEditsControl({ field, value, describedBy, commit }: ControlProps<PlainField>) {
  const count = Array.isArray(value) ? value.length : 0;
  if (count === 0) return <span className={styles.file}>{texts.none}</span>;
  return (
    <span className={styles.byHand}>
      <span>{texts.count(count)}</span>
      <button type="button" className={shared.word} onClick={() => setView(SHOWN[field.name] ?? {})}>
        {texts.show}
      </button>
      <button
        type="button"
        className={shared.word}
        aria-describedby={describedBy}
        onClick={() => commit(undefined, texts.undone)}
      >
        {texts.undoAll}
      </button>
    </span>
  );
}
