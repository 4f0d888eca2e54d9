import { useDesk } from './desk-store.ts';
import styles from './Rulers.module.css';
import { rulerTicks, type Tick } from './ruler-ticks.ts';
import { strings } from './strings.ts';

/** Breadth of a ruler, px; the style sheet has it too. */
const BREADTH = 24;
const LENGTHS: Record<Tick['rank'], number> = { number: 9, half: 6, fine: 4 };

type Side = 'top' | 'left';

interface RulerProps {
  side: Side;
  /** Where 0 mm is, px from the ruler's start. */
  zero: number;
  pxPerMm: number;
  length: number;
  /** Length of the sheet along the ruler, mm. */
  sheet: number;
}

const half = (at: number) => Math.round(at) + 0.5;

/** A stretch of a ruler, over its whole breadth. */
function along(side: Side, start: number, size: number) {
  return side === 'top'
    ? { x: start, y: 0, width: size, height: BREADTH }
    : { x: 0, y: start, width: BREADTH, height: size };
}

/** Where the pointer is. Apart from the ticks, which stay while it moves. */
function Pointer({ side }: { side: Side }) {
  const at = useDesk(({ pointer }) => (pointer ? Math.round(side === 'top' ? pointer.x : pointer.y) : null));
  return at === null ? null : <rect className={styles.pointer} {...along(side, at, 1)} />;
}

function Ruler({ side, zero, pxPerMm, length, sheet }: RulerProps) {
  const ticks = rulerTicks(zero, pxPerMm, length);
  const across = side === 'top';
  const tickPath = ticks
    .map(({ at, rank }) =>
      across ? `M${half(at)} ${BREADTH}v${-LENGTHS[rank]}` : `M${BREADTH} ${half(at)}h${-LENGTHS[rank]}`,
    )
    .join('');
  return (
    <svg className={styles[side]} aria-hidden="true">
      <rect className={styles.span} {...along(side, zero, sheet * pxPerMm)} />
      <path className={styles.ticks} d={tickPath} />
      {ticks
        .filter(({ rank }) => rank === 'number')
        .map(({ mm, at }) => (
          <text
            key={mm}
            className={styles.number}
            transform={across ? `translate(${half(at)} 11)` : `translate(11 ${half(at)}) rotate(-90)`}
          >
            {strings.rulerNumber(mm)}
          </text>
        ))}
      <Pointer side={side} />
    </svg>
  );
}

/** Millimetres along the upper and the left edge, 0 at the sheet's corner. */
export function Rulers() {
  const { x, y, pxPerMm } = useDesk((state) => state.camera);
  const { width, height } = useDesk((state) => state.desk);
  const sheet = useDesk((state) => state.sheet);
  const shown = sheet ?? { width: 0, height: 0 };
  return (
    <>
      <Ruler side="top" zero={x} pxPerMm={pxPerMm} length={width} sheet={shown.width} />
      <Ruler side="left" zero={y} pxPerMm={pxPerMm} length={height} sheet={shown.height} />
      <span className={styles.corner} aria-hidden="true">
        {strings.ruler}
      </span>
    </>
  );
}
