import { type ReactNode, useState } from 'react';
import styles from './Regions.module.css';
import { regionPanelTexts as texts } from './strings.ts';

/** So many rows show without being asked for. */
const FIRST = 6;

interface FewProps<Item> {
  items: readonly Item[];
  children: (item: Item, place: number) => ReactNode;
}

/** A list that shows its first rows, the rest on demand. */
export function Few<Item>({ items, children }: FewProps<Item>) {
  const [all, setAll] = useState(false);
  const more = items.length - FIRST;
  return (
    <>
      <ul className={styles.list}>{(all ? items : items.slice(0, FIRST)).map(children)}</ul>
      {more > 0 && (
        <button type="button" className={styles.word} aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? texts.fewer : texts.more(more)}
        </button>
      )}
    </>
  );
}
