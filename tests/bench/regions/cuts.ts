import { columnDistance } from '../../../workers/kernels/distance.ts';
import { grow } from '../../../workers/kernels/grow.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { randomOf, shuffled } from '../../unit/support/random.ts';
import { sharedPlane } from '../pictures.ts';
import { type Truth, widestOf } from './truth.ts';

/** Most cuts in one drawing, each through the border of another two regions. */
const MOST_CUTS = 6;
/** Between the middles of two cuts, px. */
const APART = 60;
/** How far a cut goes on into the regions on either side, px; its ends must lie in them over its whole width. */
const OUT = 3;
/** Middles of border to try for each pair of regions. */
const TRIES = 40;

export interface Cut {
  between: readonly [number, number];
  x: number;
  y: number;
}

export interface CutDrawing {
  line: Plane;
  cuts: Cut[];
}

/** Where a drawing can be cut. */
export interface Cuttable {
  line: Plane;
  truth: Truth;
  /** Where the line is thicker than this, it is no stroke to cut through, px. */
  thickest: number;
  /** Pairs of regions, with the places on line where they meet. */
  borders: [number, number, number[]][];
  /** The widest disc in each region, px across. */
  widest: Float64Array;
}

export function cuttable(line: Plane, truth: Truth, thickest: number): Cuttable {
  return { line, truth, thickest, borders: bordersOf(line, truth, thickest), widest: widestOf(line, truth) };
}

/**
 * Openings of so many px cut through strokes at random places, so that each joins the two true regions on either side
 * and no other. A stroke is cut square to its run, from region to region. A region that is nowhere as wide as the
 * opening keeps its border.
 */
export function withCuts(from: Cuttable, size: number, seed: number): CutDrawing {
  const { width, height } = from.line;
  const out = sharedPlane(width, height);
  out.data.set(from.line.data);
  const random = randomOf(seed);
  const cuts: Cut[] = [];
  for (const [a, b, middles] of shuffled(from.borders, seed)) {
    if (cuts.length === MOST_CUTS) break;
    if (Math.min(from.widest[a]!, from.widest[b]!) <= size) continue;
    for (let n = 0; n < TRIES; n++) {
      const at = middles[Math.floor(random() * middles.length)]!;
      const [x, y] = [at % width, Math.floor(at / width)];
      if (cuts.some((cut) => Math.hypot(cut.x - x, cut.y - y) < APART + size)) continue;
      const erased = strip(from, [x, y], [a, b], size);
      if (!erased) continue;
      for (const i of erased) out.data[i] = 0;
      cuts.push({ between: [a, b], x, y });
      break;
    }
  }
  return { line: out, cuts };
}

/** True regions are grown under the line until they meet. */
function bordersOf({ width, height }: Plane, { labels, count }: Truth, reach: number): Cuttable['borders'] {
  const isRegion = new Uint8Array(width * height);
  for (let i = 0; i < isRegion.length; i++) isRegion[i] = labels[i]! > 0 ? 255 : 0;
  const columns = new Uint16Array(width * height);
  const sites = { data: isRegion, lowest: 255, highest: 255, limit: reach, framed: false, out: columns };
  columnDistance({ ...sites, width, height }, 0, width);
  const names = Uint32Array.from({ length: count + 1 }, (_, i) => i);
  const owner = new Uint32Array(width * height);
  grow({ labels, names, columns, width, height, reach2: reach * reach, out: owner }, 0, height);
  const pairs = new Map<number, number[]>();
  const meet = (i: number, p: number, q: number) => {
    if (p === q || p === 0 || q === 0) return;
    const key = Math.min(p, q) * (count + 1) + Math.max(p, q);
    const places = pairs.get(key);
    if (places) places.push(i);
    else pairs.set(key, [i]);
  };
  for (let i = 0; i < owner.length - width; i++) {
    if (labels[i] !== 0) continue;
    meet(i, owner[i]!, owner[i + 1]!);
    meet(i, owner[i]!, owner[i + width]!);
  }
  return [...pairs].map(([key, places]) => [Math.floor(key / (count + 1)), key % (count + 1), places]);
}

type Place = readonly [number, number];

/**
 * Pixels of a strip across the line, or null where it does not join just the two regions, or opens to one of them over
 * a part of its width only, as in a corner.
 */
function strip(from: Cuttable, [x, y]: Place, [a, b]: Place, size: number): number[] | null {
  const { thickest } = from;
  const { labels } = from.truth;
  const { width, height, data } = from.line;
  const labelAt = (u: number, v: number) =>
    u < 0 || v < 0 || u >= width || v >= height ? -1 : labels[v * width + u]!;
  const nearest = (label: number) => {
    let best: Place | null = null;
    let least = thickest * thickest;
    for (let v = y - thickest; v <= y + thickest; v++)
      for (let u = x - thickest; u <= x + thickest; u++) {
        const d2 = (u - x) * (u - x) + (v - y) * (v - y);
        if (d2 >= least || labelAt(u, v) !== label) continue;
        least = d2;
        best = [u, v];
      }
    return best as Place | null;
  };
  const [start, end] = [nearest(a), nearest(b)];
  if (!start || !end) return null;
  const across = Math.hypot(end[0] - start[0], end[1] - start[1]);
  if (across > thickest) return null;
  const [ux, uy] = [(end[0] - start[0]) / across, (end[1] - start[1]) / across];
  const reach = Math.ceil(across + size);
  const erased: number[] = [];
  const joined = new Set<number>();
  for (let v = start[1] - reach; v <= start[1] + reach; v++)
    for (let u = start[0] - reach; u <= start[0] + reach; u++) {
      const [dx, dy] = [u - start[0], v - start[1]];
      const along = dx * ux + dy * uy;
      if (along < -OUT || along > across + OUT || Math.abs(dx * uy - dy * ux) > size / 2) continue;
      const label = labelAt(u, v);
      if ((along < 1 - OUT && label !== a) || (along > across + OUT - 1 && label !== b)) return null;
      if (data[v * width + u] !== 0) erased.push(v * width + u);
      for (const near of [label, labelAt(u - 1, v), labelAt(u + 1, v), labelAt(u, v - 1), labelAt(u, v + 1)])
        if (near > 0) joined.add(near);
    }
  return joined.size === 2 && joined.has(a) && joined.has(b) ? erased : null;
}
