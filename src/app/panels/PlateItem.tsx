import { type KeyboardEvent, useEffect, useRef } from 'react';
import type { PlateThumbnail } from '../../../workers/client.ts';
import { InkChip } from '../../docket/InkChip.tsx';
import { movePlate, readInkSet } from '../../docket/ink-edits.ts';
import { strings } from '../../docket/strings.ts';
import type { PlateRow } from '../../docket/use-plates.ts';
import { withSetting } from '../../store/edits.ts';
import { useResults, useView } from '../../store/hooks.ts';
import { edit } from '../../store/job-store.ts';
import { setView } from '../../store/view-store.ts';
import styles from './Plates.module.css';
import { shrinkPlate } from './shrink-plate.ts';

const words = strings.panel;

/** Two pixels of the canvas to one of the page: sharp on fine screens. */
const SIZE = { width: 2 * 34, height: 2 * 42 };

/** A plate's coverage as black on paper. */
function Thumbnail({ thumbnail }: { thumbnail: PlateThumbnail | undefined }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    if (!thumbnail || !canvas.current) return;
    const { width, height, coverage } = shrinkPlate(thumbnail, SIZE.width, SIZE.height);
    const black = new ImageData(width, height);
    for (let i = 0; i < coverage.length; i++) black.data[i * 4 + 3] = coverage[i]!;
    canvas.current.width = width;
    canvas.current.height = height;
    canvas.current.getContext('2d')?.putImageData(black, 0, 0);
  }, [thumbnail]);
  return (
    <span className={styles.thumbnail} aria-hidden="true">
      <canvas ref={canvas} />
    </span>
  );
}

export interface PlateItemProps {
  plate: PlateRow;
  /** How many plates there are. */
  of: number;
  /** Id of the Ink set. */
  set: string;
}

/** One plate: press it to see it alone, again for the proof; arrow keys with Alt move it in print order. */
export function PlateItem({ plate, of, set }: PlateItemProps) {
  const { id, name, order, pass, ink } = plate;
  const shown = useView(({ showing }) => showing.view === 'plate' && showing.plate === id);
  const result = useResults(({ overview }) => overview?.plates.find((each) => each.id === id));
  const move = (by: number) => {
    const to = order - 1 + by;
    if (to < 0 || to >= of) return;
    edit(words.moved(name, to + 1), (job) => {
      const read = readInkSet(job.graph.nodes.find((node) => node.id === set));
      return read ? withSetting(job, set, 'plates', movePlate(read.plates, order - 1, to)) : job;
    });
  };
  const press = (event: KeyboardEvent) => {
    const by = event.altKey ? { ArrowUp: -1, ArrowDown: 1 }[event.key] : undefined;
    if (!by) return;
    event.preventDefault();
    move(by);
  };
  const percent = result && `${Math.round(result.coveragePercent)}\u00a0%`;
  return (
    <li className={styles.item} data-shown={shown}>
      <button
        type="button"
        className={styles.plate}
        aria-pressed={shown}
        aria-keyshortcuts="Alt+ArrowUp Alt+ArrowDown"
        title={shown ? words.back : words.look(name)}
        onClick={() => setView({ showing: shown ? { view: 'proof' } : { view: 'plate', plate: id } })}
        onKeyDown={press}
      >
        <span className={styles.order}>{order}</span>
        <Thumbnail thumbnail={result?.thumbnail} />
        <span className={styles.words}>
          <span className={styles.name}>{name}</span>
          <span className={styles.quiet}>
            <span className={styles.pass}>{words.pass(pass)}</span>
            {percent && <span className={styles.percent}>{percent}</span>}
          </span>
        </span>
        <InkChip ink={ink} tear={order} />
      </button>
      <span className={styles.moves}>
        <button
          type="button"
          disabled={order === 1}
          aria-label={words.earlierOf(name)}
          onClick={() => move(-1)}
        >
          {words.earlier}
        </button>
        <button
          type="button"
          disabled={order === of}
          aria-label={words.laterOf(name)}
          onClick={() => move(1)}
        >
          {words.later}
        </button>
      </span>
    </li>
  );
}
