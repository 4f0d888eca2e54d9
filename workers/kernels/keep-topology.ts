import type { Plane } from './plane.ts';
import { AROUND, LINE_PIECES, PAPER_PIECES } from './simple-points.ts';

export interface KeepTopologyArgs {
  /** The line before and after it was made heavier, or finer; all changes go one way. */
  before: Plane;
  after: Plane;
  /** How far each pixel is from what grows, in steps of any size: the order in which pixels change. */
  rank: Uint8Array;
  /** For a line that gets finer: where its ends hold it; null when it gets heavier. */
  ends: LineEnds | null;
  out: Plane;
}

export interface LineEnds {
  /** One byte a pixel: above 0 where the line would go as a whole. */
  thin: Uint8Array;
  /** A pixel is on the middle of its line where no rank beside it is higher by more than this a px. */
  slope: number;
}

/** The bit of coverage that tells line from paper. */
const LINE = 128;

/**
 * Takes over `after` as far as the pieces of line (8-connected) and of paper (4-connected) and what borders on
 * what stay as they were `before`. Pixels change sides one by one, the nearest first and in raster order among
 * equals, each only while it is simple; one that had to wait is tried again when a pixel beside it has changed.
 * Homotopic growth in order of distance: Vincent, "Efficient computation of various types of skeletons", 1991
 * (from memory). Where a line would go as a whole, the pixels at the ends of its middle stay too: only
 * its breadth goes.
 */
export function keepTopology(args: KeepTopologyArgs): void {
  const { before, after, rank, ends } = args;
  const { width, height } = before;
  const out = args.out.data;
  const old = before.data;
  const wanted = after.data;
  out.set(wanted);
  const order = changing(old, wanted, rank);
  for (const i of order) out[i] = old[i]!;
  const steps = AROUND.map(([dx, dy]) => dy * width + dx);
  const waits = (i: number) => ((out[i]! ^ wanted[i]!) & LINE) !== 0;
  const retry: number[] = [];
  for (const first of order) {
    retry.push(first);
    while (retry.length > 0) {
      const i = retry.pop()!;
      if (!waits(i)) continue;
      const x = i % width;
      const y = (i - x) / width;
      const inside = insideAround(x, y, width, height);
      const line = lineAround(out, i, steps, inside);
      if (LINE_PIECES[line] !== 1 || PAPER_PIECES[line ^ inside] !== 1) continue;
      if (
        ends !== null &&
        ends.thin[i] !== 0 &&
        TIPS[line] === 1 &&
        isRidge(rank, i, line, steps, ends.slope)
      )
        continue;
      out[i] = wanted[i]!;
      for (let bit = 0; bit < 8; bit++) {
        const next = i + steps[bit]!;
        if (((inside >> bit) & 1) === 0 || !waits(next)) continue;
        if (rank[next]! < rank[first]! || (rank[next] === rank[first] && next < first)) retry.push(next);
      }
    }
  }
}

/** Pixels that are to change sides, by rank and then in raster order. */
function changing(old: Uint8Array, wanted: Uint8Array, rank: Uint8Array): Uint32Array {
  const start = new Uint32Array(257);
  for (let i = 0; i < old.length; i++) if (((old[i]! ^ wanted[i]!) & LINE) !== 0) start[rank[i]! + 1]!++;
  for (let r = 0; r < 256; r++) start[r + 1]! += start[r]!;
  const order = new Uint32Array(start[256]!);
  for (let i = 0; i < old.length; i++)
    if (((old[i]! ^ wanted[i]!) & LINE) !== 0) order[start[rank[i]!]!++] = i;
  return order;
}

/** The neighbours of a pixel that are line, as a pattern; what lies beyond the edge of the picture is none. */
function lineAround(data: Uint8Array, i: number, steps: readonly number[], inside: number): number {
  let line = 0;
  for (let bit = 0; bit < 8; bit++)
    if (((inside >> bit) & 1) === 1) line |= (data[i + steps[bit]!]! >> 7) << bit;
  return line;
}

const ALL = 255;
/** Patterns of the neighbours there are at the top, right, bottom and left edge. */
const BELOW = 0b01111100;
const LEFT = 0b11110001;
const ABOVE = 0b11000111;
const RIGHT = 0b00011111;

/** The neighbours of a pixel that lie in the picture, as a pattern: beyond its edge is neither line nor paper. */
function insideAround(x: number, y: number, width: number, height: number): number {
  let inside = ALL;
  if (y === 0) inside &= BELOW;
  if (x === width - 1) inside &= LEFT;
  if (y === height - 1) inside &= ABOVE;
  if (x === 0) inside &= RIGHT;
  return inside;
}

/** `TIPS[line]`: 1 where a pixel hangs on by one neighbour, or by two side by side. */
const TIPS = Uint8Array.from({ length: 256 }, (_, line) =>
  AROUND.some((_step, bit) => {
    const one = 1 << bit;
    return line === one || line === (one | (1 << ((bit + 1) & 7)));
  })
    ? 1
    : 0,
);

/** Whether a pixel lies on the middle of its line: the distance from the paper rises but gently beside it. */
function isRidge(
  rank: Uint8Array,
  i: number,
  line: number,
  steps: readonly number[],
  slope: number,
): boolean {
  return steps.every((step, bit) => {
    if (((line >> bit) & 1) === 0) return true;
    return rank[i + step]! - rank[i]! <= (bit & 1 ? Math.SQRT2 : 1) * slope;
  });
}
