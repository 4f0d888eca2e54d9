import { useId, useRef, useState } from 'react';
import { useJob } from '../../store/hooks.ts';
import { edit } from '../../store/job-store.ts';
import { setView } from '../../store/view-store.ts';
import { editionTexts } from '../edition/strings.ts';
import { StyleList } from '../styles/StyleList.tsx';
import { styleTexts } from '../styles/strings.ts';
import { chooseDrawing, chooseJob } from './file-shortcuts.ts';
import { setFiles } from './files-store.ts';
import styles from './JobMenu.module.css';
import { KeptLine } from './KeptLine.tsx';
import { openExample } from './open-first-job.ts';
import { RecentJobs } from './RecentJobs.tsx';
import { saveJob, saveJobAs } from './save-job.ts';
import { files as texts } from './strings.ts';

const MOD = /Mac|iP/.test(navigator.platform) ? texts.menu.keys.modOnMac : texts.menu.keys.mod;

const ITEMS: readonly { text: string; keys?: string; run(): Promise<void> }[] = [
  { text: texts.menu.fresh, run: chooseDrawing },
  { text: texts.menu.open, keys: texts.menu.keys.open, run: chooseJob },
  { text: texts.menu.save, keys: texts.menu.keys.save, run: saveJob },
  { text: texts.menu.saveAs, keys: texts.menu.keys.saveAs, run: saveJobAs },
  { text: styleTexts.save, run: async () => setFiles({ question: { kind: 'style' } }) },
  { text: editionTexts.open, run: async () => setView({ sheet: 'edition', wiringOpen: false }) },
  { text: texts.menu.example, run: openExample },
];

/** The job's name, and under it all that can be done with jobs. */
export function JobMenu() {
  const name = useJob((job) => job.name);
  const [open, setOpen] = useState(false);
  const sheet = useRef<HTMLDivElement>(null);
  const id = useId();
  const run = (action: () => Promise<void>) => {
    sheet.current?.hidePopover();
    void action();
  };
  return (
    <div className={styles.place}>
      <button
        type="button"
        className={styles.opener}
        popoverTarget={id}
        aria-expanded={open}
        aria-label={`${texts.menu.label}: ${name}`}
      >
        <span>{name}</span>
        <svg viewBox="0 0 10 6" width="10" height="6" aria-hidden="true">
          <path d="M0.5 0.5 5 5 9.5 0.5" fill="none" stroke="currentColor" strokeWidth="1.2" />
        </svg>
      </button>
      <div
        ref={sheet}
        id={id}
        popover="auto"
        className={styles.sheet}
        onToggle={(event) => setOpen(event.newState === 'open')}
      >
        {open && (
          <>
            <NameField />
            <KeptLine />
            <ul className={styles.items}>
              {ITEMS.map((item) => (
                <li key={item.text}>
                  <button type="button" className={styles.item} onClick={() => run(item.run)}>
                    <span>{item.text}</span>
                    {item.keys && <kbd>{`${MOD} ${item.keys}`}</kbd>}
                  </button>
                </li>
              ))}
            </ul>
            <StyleList run={run} />
            <RecentJobs run={run} />
          </>
        )}
      </div>
    </div>
  );
}

/** Gives the job another name; what cannot be a name is let be. */
function NameField() {
  const name = useJob((job) => job.name);
  const [text, setText] = useState(name);
  const field = useId();
  const rename = () => {
    const wanted = text.trim().slice(0, 120);
    if (wanted === '') setText(name);
    else edit(texts.menu.rename, (job) => (job.name === wanted ? job : { ...job, name: wanted }));
  };
  return (
    <div className={styles.name}>
      <label htmlFor={field}>{texts.menu.name}</label>
      <input
        id={field}
        value={text}
        autoComplete="off"
        onChange={(event) => setText(event.target.value)}
        onBlur={rename}
        onKeyDown={(event) => event.key === 'Enter' && rename()}
      />
    </div>
  );
}
