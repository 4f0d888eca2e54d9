import { useEffect } from 'react';
import { useStore } from 'zustand';
import styles from '../files/JobMenu.module.css';
import { newInStyle } from './new-in-style.ts';
import { styleTexts as texts } from './strings.ts';
import { forgetStyle, readStyles, stylesStore } from './styles-store.ts';

/** The house styles this browser keeps: a drawing can be opened in each. */
export function StyleList({ run }: { run(action: () => Promise<void>): void }) {
  const kept = useStore(stylesStore, (state) => state.styles);
  useEffect(() => void readStyles(), []);
  return (
    <>
      <h3 className={styles.heading}>{texts.heading}</h3>
      {kept?.length === 0 && <p className={styles.none}>{texts.none}</p>}
      <ul className={styles.recent}>
        {kept?.map((style) => (
          <li key={style.name}>
            <button type="button" className={styles.job} onClick={() => run(() => newInStyle(style))}>
              <span>{texts.fresh(style.name)}</span>
            </button>
            <button
              type="button"
              className={styles.forget}
              aria-label={texts.forget(style.name)}
              onClick={() => void forgetStyle(style)}
            >
              <svg viewBox="0 0 10 10" width="10" height="10" aria-hidden="true">
                <path d="M1 1l8 8M9 1l-8 8" stroke="currentColor" strokeWidth="1.2" />
              </svg>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
