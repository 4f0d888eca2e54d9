import { useEffect, useState } from 'react';
import type { Client } from '../../../workers/client.ts';
import { Sheet } from '../sheets/Sheet.tsx';
import { FindSets } from './FindSets.tsx';
import styles from './Inks.module.css';
import { PressTest } from './PressTest.tsx';
import { Shelf } from './Shelf.tsx';
import { readShelf } from './shelf-store.ts';
import { inkTexts as texts } from './strings.ts';

const PARTS = { shelf: Shelf, sets: FindSets, test: PressTest } as const;
type Part = keyof typeof PARTS;

/** Inks: the shelf of those one owns, and which of them suit. */
export function Inks({ client }: { client: Client }) {
  const [part, setPart] = useState<Part>('shelf');
  const Shown = PARTS[part];
  useEffect(() => void readShelf(), []);
  return (
    <Sheet
      title={texts.title}
      tools={
        <fieldset className={styles.parts} aria-label={texts.partsLabel}>
          {(Object.keys(PARTS) as Part[]).map((each) => (
            <button key={each} type="button" aria-pressed={part === each} onClick={() => setPart(each)}>
              {texts.parts[each]}
            </button>
          ))}
        </fieldset>
      }
    >
      <Shown client={client} />
    </Sheet>
  );
}
