import type { Point } from './path.ts';

interface Drawing {
  line: Uint8Array;
  width: number;
  height: number;
  /** Line is coverage from here on. */
  threshold: number;
}

/** More turns than any opening takes to settle. */
const MOST_TURNS = 16;

/**
 * The shortest way across an opening from line to line, the frame counting as line: from a place in it, the nearest
 * line pixel on either side of one another in turn, until both stay.
 *
 * @param place px, about the middle
 * @param reach how far to look, px
 * @returns the free width in px, and its middle
 */
export function narrowest(drawing: Drawing, place: Point, reach: number): { width: number; place: Point } {
  const edges = edgesNear(drawing, place, reach);
  let a = nearest(edges, place, () => true);
  if (!a) return { width: reach, place };
  const away = (from: Point) => (edge: Point) =>
    (edge[0] - place[0]) * (from[0] - place[0]) + (edge[1] - place[1]) * (from[1] - place[1]) < 0;
  let b = nearest(edges, place, away(a));
  if (!b) return { width: reach, place };
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const nextA: Point = nearest(edges, b, away(b)) ?? a;
    const nextB: Point = nearest(edges, nextA, away(nextA)) ?? b;
    if (nextA === a && nextB === b) break;
    [a, b] = [nextA, nextB];
  }
  return { width: Math.sqrt(squared(a, b)) - 1, place: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] };
}

/** Centres of line pixels beside paper, and of the frame's, within reach. */
function edgesNear({ line, width, height, threshold }: Drawing, [x, y]: Point, reach: number): Point[] {
  const isLine = (u: number, v: number) =>
    u < 0 || v < 0 || u >= width || v >= height || line[v * width + u]! >= threshold;
  const edges: Point[] = [];
  for (let v = Math.max(-1, Math.floor(y - reach)); v <= Math.min(height, y + reach); v++)
    for (let u = Math.max(-1, Math.floor(x - reach)); u <= Math.min(width, x + reach); u++) {
      if (!isLine(u, v)) continue;
      if (isLine(u - 1, v) && isLine(u + 1, v) && isLine(u, v - 1) && isLine(u, v + 1)) continue;
      edges.push([u + 0.5, v + 0.5]);
    }
  return edges;
}

function nearest(edges: readonly Point[], to: Point, fits: (edge: Point) => boolean): Point | undefined {
  let best: Point | undefined;
  for (const edge of edges) if (fits(edge) && (!best || squared(edge, to) < squared(best, to))) best = edge;
  return best;
}

function squared(a: Point, b: Point): number {
  return (a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]);
}
