import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { NodeKind } from '../graph/node-kind.ts';
import styles from './Sheet.module.css';
import { searchKinds } from './search-kinds.ts';
import { strings } from './strings.ts';
import { setWiring } from './wiring-store.ts';

export interface KindListProps {
  title: string;
  kinds: readonly NodeKind[];
  choose(kind: string): void;
}

/** Moves the focus among input and buttons of the list with the arrow keys. */
function walk(event: KeyboardEvent<HTMLElement>): void {
  const direction = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (direction === 0) return;
  event.preventDefault();
  const stops = [...event.currentTarget.querySelectorAll<HTMLElement>('input, li button')];
  stops[stops.indexOf(document.activeElement as HTMLElement) + direction]?.focus();
}

/** A list of node kinds to search and choose from. Enter takes the first. */
export function KindList({ title, kinds, choose }: KindListProps) {
  const [typed, setTyped] = useState('');
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.focus(), []);
  const found = searchKinds(kinds, typed);
  return (
    <section className={styles.kinds} aria-label={title} onKeyDown={walk}>
      <header className={styles.kindsHead}>
        <input
          type="search"
          ref={input}
          aria-label={`${title}: ${strings.search.toLowerCase()}`}
          placeholder={title}
          value={typed}
          onChange={({ target }) => setTyped(target.value)}
          onKeyDown={({ key }) => key === 'Enter' && found[0] && choose(found[0].kind)}
        />
        <button type="button" className={styles.word} onClick={() => setWiring({ list: null })}>
          {strings.close}
        </button>
      </header>
      {found.length === 0 && <p className={styles.none}>{strings.nothing}</p>}
      <ul aria-label={strings.kinds}>
        {found.map(({ kind, title: name, help }) => (
          <li key={kind}>
            <button type="button" onClick={() => choose(kind)}>
              <span>{name}</span>
              <span className={styles.none}>{help}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
