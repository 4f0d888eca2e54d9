import styles from './Dialog.module.css';
import { Dialog } from './Dialog.tsx';
import type { Question } from './files-store.ts';
import { files as texts } from './strings.ts';

/** Asks what a drawing that was dropped on an open job is to become. */
export function DroppedQuestion({ question }: { question: Extract<Question, { kind: 'dropped' }> }) {
  const { file, answer } = question;
  return (
    <Dialog title={texts.drop.title(file)} onLetBe={() => answer(null)}>
      <div>
        <button type="button" className={styles.choice} onClick={() => answer('new')}>
          <strong>{texts.drop.fresh}</strong>
          <span className={styles.quiet}>{texts.drop.freshHelp}</span>
        </button>
        <button type="button" className={styles.choice} onClick={() => answer('replace')}>
          <strong>{texts.drop.replace}</strong>
          <span className={styles.quiet}>{texts.drop.replaceHelp}</span>
        </button>
        <button type="button" className={styles.choice} onClick={() => answer('rough')}>
          <strong>{texts.drop.rough}</strong>
          <span className={styles.quiet}>{texts.drop.roughHelp}</span>
        </button>
      </div>
      <div className={styles.actions}>
        <button type="button" className={styles.plain} onClick={() => answer(null)}>
          {texts.cancel}
        </button>
      </div>
    </Dialog>
  );
}
