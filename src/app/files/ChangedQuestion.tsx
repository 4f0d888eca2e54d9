import styles from './Dialog.module.css';
import { Dialog } from './Dialog.tsx';
import type { Question } from './files-store.ts';
import { files as texts } from './strings.ts';

/** Asks whether a drawing that was changed on disk is to be taken in. */
export function ChangedQuestion({ question }: { question: Extract<Question, { kind: 'changed' }> }) {
  const { file, answer } = question;
  return (
    <Dialog title={texts.changed.title(file)} onLetBe={() => answer(null)}>
      <p className={styles.quiet}>{texts.drop.replaceHelp}</p>
      <div className={styles.actions}>
        <button type="button" className={styles.plain} onClick={() => answer(null)}>
          {texts.changed.not}
        </button>
        <button type="button" className={styles.main} onClick={() => answer(true)}>
          {texts.changed.take}
        </button>
      </div>
    </Dialog>
  );
}
