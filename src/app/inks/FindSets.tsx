import { useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { Cancelled, type Client } from '../../../workers/client.ts';
import { labOfHex } from '../../docket/ColourControl.tsx';
import { InkChip } from '../../docket/InkChip.tsx';
import { USUAL_RULES } from '../../ink/recipe-search.ts';
import { printOf } from '../../nodes/print.ts';
import { useJob, useView } from '../../store/hooks.ts';
import { usePrintColours } from '../panels/use-print-colours.ts';
import { type Found, FoundSets } from './FoundSets.tsx';
import styles from './Inks.module.css';
import { shelfStore } from './shelf-store.ts';
import { inkTexts } from './strings.ts';
import { WantedList } from './WantedList.tsx';
import { gathered, type Wanted, wantedOfPrint, wantedOfRough } from './wanted-colours.ts';

const texts = inkTexts.sets;
const COUNTS = [2, 3, 4] as const;
/** Colours that are looked for, and sets that are shown. */
const MOST_WANTED = 12;
const MOST_SETS = 6;

const SOURCES = ['print', 'rough', 'picked'] as const;
type Source = (typeof SOURCES)[number];

/** Which inks of the shelf come nearest to colours: those of the print, of the rough, or picked. */
export function FindSets({ client }: { client: Client }) {
  const shelf = useStore(shelfStore, (state) => state.shelf);
  const job = useJob((each) => each);
  const inHand = useView((state) => state.inHand);
  const found = usePrintColours();
  const colours = typeof found === 'string' ? null : found;
  const print = useMemo(() => printOf(job.graph.nodes), [job.graph.nodes]);
  const [source, setSource] = useState<Source>('print');
  const [picked, setPicked] = useState<readonly Wanted[]>([]);
  const [fresh, setFresh] = useState('#c85a3c');
  const [rough, setRough] = useState<readonly Wanted[]>([]);
  const [count, setCount] = useState<(typeof COUNTS)[number]>(3);
  const [keep, setKeep] = useState<readonly string[]>([]);
  const [running, setRunning] = useState<{ done: number; of: number } | null>(null);
  const [result, setResult] = useState<Found | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const stop = useRef<AbortController | null>(null);
  const hasRough = job.graph.nodes.some(({ kind }) => kind === 'match-rough');
  const wanted = useMemo(() => {
    if (source === 'picked') return picked;
    if (source === 'rough') return gathered(rough, MOST_WANTED);
    return colours ? gathered(wantedOfPrint(job, colours), MOST_WANTED) : [];
  }, [source, picked, rough, colours, job]);
  if (!shelf || !print) return null;

  const choose = (next: Source) => {
    setSource(next);
    if (next !== 'rough') return;
    wantedOfRough(client, job).then(setRough, (error: Error) => setTrouble(error.message));
  };
  const find = async () => {
    stop.current = new AbortController();
    setTrouble(null);
    setRunning({ done: 0, of: 1 });
    const { paper, inks: _, passes: __, measured: ___, ...printing } = print.input;
    try {
      const options = { signal: stop.current.signal, onProgress: setRunning };
      const input = {
        shelf: shelf.inks,
        paper,
        printing,
        wanted,
        count,
        rules: USUAL_RULES,
        keep,
        most: MOST_SETS,
      };
      setResult({ ranked: await client.run('inkSets', input, options), shelf: shelf.inks });
    } catch (error) {
      if (!(error instanceof Cancelled)) setTrouble((error as Error).message);
    } finally {
      setRunning(null);
    }
  };
  const toggle = (id: string) =>
    setKeep(keep.includes(id) ? keep.filter((each) => each !== id) : [...keep, id]);
  return (
    <div className={styles.sets}>
      <p className={styles.quiet}>{texts.help}</p>
      <fieldset className={styles.row}>
        <legend>{texts.wanted}</legend>
        {SOURCES.filter((each) => each !== 'rough' || hasRough).map((each) => (
          <label key={each}>
            <input type="radio" name="wanted" checked={source === each} onChange={() => choose(each)} />
            {texts.from[each]}
          </label>
        ))}
      </fieldset>
      <WantedList
        wanted={wanted}
        drop={source === 'picked' ? (at) => setPicked(picked.toSpliced(at, 1)) : null}
      />
      {source === 'picked' && (
        <div className={styles.actions}>
          <input
            type="color"
            aria-label={texts.colour}
            value={fresh}
            onChange={({ target }) => setFresh(target.value)}
          />
          <button type="button" onClick={() => setPicked([...picked, { lab: labOfHex(fresh), weight: 1 }])}>
            {texts.pick}
          </button>
          <button
            type="button"
            disabled={!inHand || !colours}
            onClick={() =>
              inHand && colours && setPicked([...picked, { lab: colours.colourOf(inHand).lab, weight: 1 }])
            }
          >
            {texts.pickHand}
          </button>
        </div>
      )}
      <fieldset className={styles.row}>
        <legend>{texts.count}</legend>
        {COUNTS.map((each) => (
          <label key={each}>
            <input type="radio" name="count" checked={count === each} onChange={() => setCount(each)} />
            {each}
          </label>
        ))}
      </fieldset>
      <fieldset className={styles.row}>
        <legend>{texts.keep}</legend>
        {shelf.inks.map((ink, i) => (
          <label key={ink.id}>
            <input type="checkbox" checked={keep.includes(ink.id)} onChange={() => toggle(ink.id)} />
            <InkChip ink={ink} tear={i} />
            {ink.name}
          </label>
        ))}
      </fieldset>
      <p className={styles.go}>
        {running ? (
          <button type="button" className={styles.main} onClick={() => stop.current?.abort()}>
            {texts.stop}
          </button>
        ) : (
          <button
            type="button"
            className={styles.main}
            disabled={wanted.length === 0}
            onClick={() => void find()}
          >
            {texts.find}
          </button>
        )}
        <span role="status" className={styles.quiet}>
          {running ? texts.finding(running.done, running.of) : wanted.length === 0 && texts.none}
        </span>
      </p>
      {trouble && <p role="alert">{trouble}</p>}
      {result && <FoundSets client={client} found={result} />}
    </div>
  );
}
