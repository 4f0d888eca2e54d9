import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { Client } from '../../../workers/client.ts';
import { SaveStyle } from '../styles/SaveStyle.tsx';
import { startAutosave } from './autosave.ts';
import { ChangedQuestion } from './ChangedQuestion.tsx';
import { DroppedQuestion } from './DroppedQuestion.tsx';
import styles from './FilesLayer.module.css';
import { filesStore, setFiles } from './files-store.ts';
import { files as texts } from './strings.ts';
import { useDrop } from './use-drop.ts';
import { WidthQuestion } from './WidthQuestion.tsx';
import { watchDrawing } from './watch-drawing.ts';

/** All that lies over the window for files: the drop hint, questions, what is under way and what went wrong. */
export function FilesLayer({ client }: { client: Client | null }) {
  const over = useDrop();
  const question = useStore(filesStore, (state) => state.question);
  useEffect(() => setFiles({ client }), [client]);
  useEffect(() => startAutosave(), []);
  useEffect(() => watchDrawing(), []);
  return (
    <>
      {over && <p className={styles.hint}>{texts.drop.hint}</p>}
      {question?.kind === 'width' && <WidthQuestion question={question} />}
      <SaveStyle />
      {question?.kind === 'changed' && <ChangedQuestion question={question} />}
      {question?.kind === 'dropped' && <DroppedQuestion question={question} />}
      <div className={styles.notices} aria-live="polite">
        <Under />
        <Notice />
      </div>
    </>
  );
}

function Under() {
  const busy = useStore(filesStore, (state) => state.busy);
  if (!busy) return null;
  return (
    <p className={styles.notice}>
      <span>{busy.text}</span>
      <button type="button" onClick={busy.cancel}>
        {texts.cancel}
      </button>
    </p>
  );
}

function Notice() {
  const notice = useStore(filesStore, (state) => state.notice);
  if (notice === null) return null;
  return (
    <p className={styles.notice}>
      <span>{notice}</span>
      <button type="button" aria-label={texts.dismiss} onClick={() => setFiles({ notice: null })}>
        {texts.close}
      </button>
    </p>
  );
}
