import { useView } from '../../store/hooks.ts';
import { type Point, toDesk } from '../camera.ts';
import { useDesk } from '../desk-store.ts';
import styles from './RegionMarks.module.css';
import { type Unfinished, useUnfinished } from './unfinished-store.ts';

/** Corners given one by one are shown; the places of a drag are not. */
const MOST_CORNERS = 24;

const lineThrough = (points: readonly Point[]) => `M${points.map(({ x, y }) => `${x} ${y}`).join('L')}`;

/** What the places and the hand come to so far, as an SVG path in px. */
function pathOf(points: readonly Point[], hand: Point | null, outline: Unfinished['outline']): string {
  const first = points[0]!;
  const last = hand ?? first;
  if (outline === 'rectangle')
    return `${lineThrough([first, { x: last.x, y: first.y }, last, { x: first.x, y: last.y }])}Z`;
  const path = lineThrough(hand ? [...points, hand] : points);
  if (outline === 'ring') return `${path}Z`;
  if (outline !== 'circle') return path;
  const r = Math.hypot(last.x - first.x, last.y - first.y);
  return `${path}M${first.x - r} ${first.y}a${r} ${r} 0 1 1 ${2 * r} 0a${r} ${r} 0 1 1 ${-2 * r} 0`;
}

/** The path a tool was begun with, on to where the hand is, and the crosshair that the keyboard moves. */
export function HandAt() {
  const tool = useView((state) => state.tool);
  const begun = useUnfinished();
  const camera = useDesk((state) => state.camera);
  const pointer = useDesk((state) => state.pointer);
  const place = useDesk((state) => state.crosshair);
  const crosshair = place && toDesk(camera, place);
  const points = begun?.tool === tool ? begun.points.map((mm) => toDesk(camera, mm)) : [];
  if (points.length === 0 && !crosshair) return null;
  const path = points.length > 0 ? pathOf(points, crosshair ?? pointer, begun?.outline) : '';
  return (
    <svg className={styles.layer} aria-hidden="true">
      {points.length > 0 && (
        <>
          <path className={styles.crosshairRim} d={path} />
          <path className={styles.path} d={path} />
          {points.length <= MOST_CORNERS &&
            points.map(({ x, y }) => (
              <rect
                key={`${x} ${y}`}
                className={styles.corner}
                x={x - 3.5}
                y={y - 3.5}
                width="7"
                height="7"
              />
            ))}
        </>
      )}
      {crosshair && (
        <g transform={`translate(${crosshair.x} ${crosshair.y})`}>
          <path className={styles.crosshairRim} d="M-15 0h11M15 0h-11M0 -15v11M0 15v-11" />
          <path className={styles.crosshair} d="M-15 0h11M15 0h-11M0 -15v11M0 15v-11M-.75 0h1.5" />
        </g>
      )}
    </svg>
  );
}
