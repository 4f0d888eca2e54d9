import { useRef, useState } from 'react';
import { colourwayOf } from '../../store/edits.ts';
import { useJob } from '../../store/hooks.ts';
import { edit } from '../../store/job-store.ts';
import { setView } from '../../store/view-store.ts';
import { ColourwayCard } from './ColourwayCard.tsx';
import styles from './Colourways.module.css';
import { addColourway, deleteColourway, duplicateColourway } from './colourway-edits.ts';
import { panelTexts } from './strings.ts';

const texts = panelTexts.colourways;

/** Every colourway as a small proof, and what can be done with the one in use. */
export function Colourways() {
  const colourways = useJob((job) => job.colourways);
  const inUse = useJob(colourwayOf);
  const [renaming, setRenaming] = useState<string | null>(null);
  const rename = useRef<HTMLButtonElement>(null);
  const { id, name } = inUse;
  const endRename = () => {
    setRenaming(null);
    rename.current?.focus();
  };
  return (
    <div className={styles.strip}>
      <h2 className={styles.title}>{texts.title}</h2>
      <ul className={styles.cards}>
        {colourways.map((each) => (
          <ColourwayCard
            key={each.id}
            colourway={each}
            inUse={each.id === id}
            renaming={renaming === each.id}
            onRename={() => setRenaming(each.id)}
            onEnd={endRename}
          />
        ))}
        <li>
          <button
            type="button"
            className={styles.add}
            aria-label={texts.add}
            title={texts.add}
            onClick={() => edit(texts.steps.add, addColourway)}
          >
            <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
              <path d="M7 1v12M1 7h12" stroke="currentColor" strokeWidth="1.3" />
            </svg>
            <span>{texts.addShort}</span>
          </button>
        </li>
      </ul>
      <fieldset className={styles.actions} aria-label={texts.actions(name)}>
        <button ref={rename} type="button" onClick={() => setRenaming(id)}>
          {texts.rename}
        </button>
        <button
          type="button"
          onClick={() => edit(texts.steps.duplicate(name), (job) => duplicateColourway(job, id))}
        >
          {texts.duplicate}
        </button>
        <button type="button" onClick={() => setView({ sheet: 'proposals', wiringOpen: false })}>
          {texts.propose}
        </button>
        <button
          type="button"
          disabled={colourways.length < 2}
          onClick={() => setView({ sheet: 'compare', wiringOpen: false })}
        >
          {texts.compare}
        </button>
        <button
          type="button"
          disabled={colourways.length < 2}
          onClick={() => edit(texts.steps.remove(name), (job) => deleteColourway(job, id))}
        >
          {texts.remove}
        </button>
      </fieldset>
    </div>
  );
}
