import { useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Client } from '../../../workers/client.ts';
import { InkRow } from '../../docket/InkRow.tsx';
import { deliveredInkSet, MOST, readInkSet } from '../../docket/ink-edits.ts';
import type { Ink } from '../../graph/inks.ts';
import { freshId } from '../../store/edits.ts';
import { useJob } from '../../store/hooks.ts';
import { say } from '../files/files-store.ts';
import styles from './Inks.module.css';
import { PhotoReader } from './PhotoReader.tsx';
import { SwapFor } from './SwapFor.tsx';
import { addToJob, chooseShelfFile, exportShelf } from './shelf-actions.ts';
import { changeShelf, shelfStore, undoShelf, withInks } from './shelf-store.ts';
import { inkTexts } from './strings.ts';

const texts = inkTexts.shelf;

const FRESH: Ink = { id: 'new-ink', name: texts.fresh, lab: [50, 0, 0], opacity: 0.005 };

/** The inks the person owns: name, colour, how they cover and grow, a note; lists come in and go out. */
export function Shelf({ client }: { client: Client }) {
  const shelf = useStore(shelfStore, (state) => state.shelf);
  const steps = useStore(shelfStore, (state) => state.past.length);
  const trouble = useStore(shelfStore, (state) => state.trouble);
  const node = useJob((job) => deliveredInkSet(job.graph));
  const set = useMemo(() => readInkSet(node), [node]);
  const [reading, setReading] = useState(false);
  if (!shelf) return null;
  const inJob = new Set(set?.inks.map(({ name }) => name));
  const full = (set?.inks.length ?? 0) >= MOST || (set?.plates.length ?? 0) >= MOST;
  const change = (id: string) => (to: Partial<Ink>) => {
    changeShelf((old) => ({
      ...old,
      inks: old.inks.map((ink) => (ink.id === id ? recoloured(ink, to) : ink)),
    }));
    return null;
  };
  return (
    <>
      <p className={styles.quiet}>
        {texts.help} {texts.readOn} {texts.stock(shelf.paper.lab, shelf.paper.surface)}.
      </p>
      {trouble && <p role="alert">{texts.trouble(trouble)}</p>}
      <div className={styles.actions}>
        <button type="button" onClick={() => changeShelf((old) => withInks(old, [FRESH], freshId))}>
          {texts.add}
        </button>
        <button type="button" aria-expanded={reading} onClick={() => setReading(!reading)}>
          {texts.fromPhoto}
        </button>
        <button type="button" onClick={() => set && changeShelf((old) => withInks(old, set.inks, freshId))}>
          {texts.takeOver}
        </button>
        <button type="button" onClick={() => void chooseShelfFile()}>
          {texts.import}
        </button>
        <button type="button" onClick={() => exportShelf(shelf, 'json')}>
          {texts.exportJson}
        </button>
        <button type="button" onClick={() => exportShelf(shelf, 'csv')}>
          {texts.exportCsv}
        </button>
        <button type="button" disabled={steps === 0} onClick={undoShelf}>
          {texts.undo}
        </button>
      </div>
      {reading && <PhotoReader client={client} paper={shelf.paper} onClose={() => setReading(false)} />}
      {shelf.inks.length === 0 && <p className={styles.quiet}>{texts.empty}</p>}
      <ul className={styles.shelf}>
        {shelf.inks.map((ink) => (
          <InkRow
            key={ink.id}
            ink={ink}
            change={change(ink.id)}
            remove={() =>
              changeShelf((old) => ({ ...old, inks: old.inks.filter(({ id }) => id !== ink.id) }))
            }
          >
            {inJob.has(ink.name) ? (
              <p className={styles.quiet}>{texts.used}</p>
            ) : (
              <>
                <button
                  type="button"
                  className={styles.word}
                  aria-label={texts.addTo(ink.name)}
                  onClick={() => (full ? say(texts.full) : addToJob(ink))}
                >
                  {texts.intoJob}
                </button>
                <SwapFor client={client} ink={ink} />
              </>
            )}
          </InkRow>
        ))}
      </ul>
    </>
  );
}

/** An ink with something changed; a colour given anew replaces the one it had, in either notation. */
function recoloured(ink: Ink, to: Partial<Ink>): Ink {
  const { lab, hex, ...others } = ink;
  const colour = to.lab || to.hex ? {} : { ...(lab && { lab }), ...(hex && { hex }) };
  return { ...others, ...colour, ...to };
}
