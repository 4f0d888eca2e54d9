import { useId, useState } from 'react';
import { useStore } from 'zustand';
import { proposalRulesSchema } from '../../graph/proposal-rules.ts';
import { styleOf } from '../../graph/style.ts';
import { jobStore } from '../../store/job-store.ts';
import { recipesInUse } from '../../store/recipe-list.ts';
import { download } from '../files/browser-files.ts';
import styles from '../files/Dialog.module.css';
import { Dialog } from '../files/Dialog.tsx';
import { filesStore, say, sayBriefly, setFiles } from '../files/files-store.ts';
import { files as fileTexts } from '../files/strings.ts';
import { styleTexts as texts } from './strings.ts';
import { keepStyle } from './styles-store.ts';

/** So many recipes a style's palette holds. */
const MOST = 24;

/** Asks for a name and keeps the open job as a house style. */
export function SaveStyle() {
  const asked = useStore(filesStore, (state) => state.question?.kind === 'style');
  return asked ? <Asked /> : null;
}

function Asked() {
  const [name, setName] = useState(jobStore.getState().job!.name);
  const field = useId();
  const close = () => setFiles({ question: null });
  const keep = async (andDownload: boolean) => {
    const job = jobStore.getState().job!;
    const palette = recipesInUse(job)
      .slice(0, MOST)
      .map((recipe) => ({ recipe }));
    const style = styleOf(job, name.trim(), proposalRulesSchema.parse({ palette }));
    close();
    if (andDownload) {
      const text = `${JSON.stringify(style, null, 1)}\n`;
      download(texts.file(style.name), new TextEncoder().encode(text), 'application/json');
    }
    try {
      await keepStyle(style);
      sayBriefly(texts.kept(style.name));
    } catch (error) {
      say(texts.trouble((error as Error).message));
    }
  };
  const usable = name.trim() !== '' && name.trim().length <= 120;
  return (
    <Dialog title={texts.title} onLetBe={close}>
      <p className={styles.quiet}>{texts.help}</p>
      <div className={styles.field}>
        <label htmlFor={field}>{texts.name}</label>
        <input
          id={field}
          style={{ flex: 1, textAlign: 'left', fontSize: 'inherit' }}
          value={name}
          autoComplete="off"
          aria-invalid={!usable}
          onChange={({ target }) => setName(target.value)}
        />
      </div>
      <div className={styles.actions}>
        <button type="button" className={styles.plain} onClick={close}>
          {fileTexts.cancel}
        </button>
        <button type="button" className={styles.plain} disabled={!usable} onClick={() => void keep(true)}>
          {texts.deliver}
        </button>
        <button type="button" className={styles.main} disabled={!usable} onClick={() => void keep(false)}>
          {texts.keep}
        </button>
      </div>
    </Dialog>
  );
}
