import { nearest } from './depth.ts';
import type { LabelPlane, Plane } from './plane.ts';

/** What is carried over borders: entries `starts[a]`..`starts[a + 1]` of region a, by rising target. */
export interface TrapRules {
  starts: Uint32Array;
  /** The region whose pixels change. */
  targets: Uint32Array;
  /** Reach in px, from pixel to pixel. */
  radius: Float64Array;
  /** Bit i: plate i takes the greater coverage, or with `holdsBack` the lesser. */
  plates: Uint16Array;
  holdsBack: Uint8Array;
  /** Greatest radius. */
  reach: number;
}

export interface TrapArgs {
  labels: LabelPlane;
  plates: { from: Plane; out: Plane }[];
  rules: TrapRules;
  /** Where the line hides the border: distances to paper along columns, and the squared depth that is enough. */
  cover: { line: Plane; columns: Uint16Array<SharedArrayBuffer>; enough2: number } | null;
}

/** Coverage from which a pixel is line. */
const LINE = 128;

/**
 * Traps plates, for rows `from..to`: grey dilation (spread) and erosion (hold back) by a disc, each kept within the
 * region it reaches into and begun only at pixels that touch it, if only by a corner. Spreads come
 * after hold-backs: where both reach, no paper may show.
 *
 * Source of dilation and erosion: J. Serra, Image Analysis and Mathematical Morphology (1982) (from memory).
 */
export function trap(args: TrapArgs, from: number, to: number): void {
  const { width, height } = args.labels;
  for (const { from: fill, out } of args.plates)
    out.data.set(fill.data.subarray(from * width, to * width), from * width);
  const reach = Math.floor(args.rules.reach);
  const first = Math.max(0, from - reach);
  const end = Math.min(height, to + reach);
  const runs: Run[] = [];
  for (let y = first; y < end; y++) findRuns(args, y, runs);
  const { holdsBack } = args.rules;
  for (const holds of [1, 0])
    for (const run of runs) if (holdsBack[run.entry] === holds) paint(args, run, from, to);
}

/** Like pixels of one row, side by side, that touch the target of a rule. */
interface Run {
  entry: number;
  first: number;
  last: number;
  y: number;
}

/** Gathers the runs that start at the border pixels of one row. */
function findRuns(args: TrapArgs, y: number, runs: Run[]): void {
  const { starts, targets } = args.rules;
  const { width, height } = args.labels;
  const labels = args.labels.data;
  const row = y * width;
  const up = y > 0 ? width : 0;
  const down = y + 1 < height ? width : 0;
  const around = new Uint32Array(8);
  /** The label of three pixels one above the other where they are alike, else -1: before, at and after x. */
  const columnAt = (i: number) =>
    labels[i] === labels[i - up] && labels[i] === labels[i + down] ? labels[i]! : -1;
  let before = columnAt(row);
  let here = before;
  for (let x = 0; x < width; x++) {
    const i = row + x;
    const own = labels[i]!;
    const after = x + 1 < width ? columnAt(i + 1) : here;
    const flat = before === own && here === own && after === own;
    before = here;
    here = after;
    if (flat) continue;
    const stop = starts[own + 1]!;
    if (starts[own] === stop || (args.cover && isCovered(args.cover, row, x, width))) continue;
    const left = x > 0 ? -1 : 0;
    const right = x + 1 < width ? 1 : 0;
    around[0] = labels[i + left]!;
    around[1] = labels[i + right]!;
    around[2] = labels[i - up]!;
    around[3] = labels[i + down]!;
    around[4] = labels[i - up + left]!;
    around[5] = labels[i - up + right]!;
    around[6] = labels[i + down + left]!;
    around[7] = labels[i + down + right]!;
    for (let k = 0; k < 8; k++) {
      const entry = around.indexOf(around[k]!) < k ? -1 : entryOf(starts[own]!, stop, targets, around[k]!);
      if (entry < 0) continue;
      const last = runs.at(-1);
      if (last?.y === y && last.entry === entry && x === last.last + 1 && sameValues(args, entry, i))
        last.last = x;
      else runs.push({ entry, first: x, last: x, y });
    }
  }
}

function entryOf(start: number, stop: number, targets: Uint32Array, target: number): number {
  let low = start;
  let high = stop;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (targets[middle]! < target) low = middle + 1;
    else high = middle;
  }
  return low < stop && targets[low] === target ? low : -1;
}

function isCovered(cover: NonNullable<TrapArgs['cover']>, row: number, x: number, width: number): boolean {
  if (cover.line.data[row + x]! < LINE) return false;
  return nearest(cover.columns, row, x, width, cover.enough2) > cover.enough2;
}

/** Whether a pixel and the one before it carry the same coverages. */
function sameValues({ plates, rules }: TrapArgs, entry: number, i: number): boolean {
  for (let p = 0; p < plates.length; p++) {
    if (((rules.plates[entry]! >> p) & 1) === 0) continue;
    const data = plates[p]!.from.data;
    if (data[i] !== data[i - 1]) return false;
  }
  return true;
}

/** Carries the coverage of a run of pixels into the target region around it, within rows `from..to`. */
function paint(
  { labels: { width, data: labels }, plates, rules }: TrapArgs,
  { entry, first, last, y }: Run,
  from: number,
  to: number,
): void {
  const radius = rules.radius[entry]!;
  const target = rules.targets[entry]!;
  const reach = Math.floor(radius);
  for (let row = Math.max(from, y - reach); row < Math.min(to, y + reach + 1); row++) {
    const half = Math.floor(Math.sqrt(radius * radius - (row - y) * (row - y)));
    const start = row * width + Math.max(0, first - half);
    const end = row * width + Math.min(width, last + half + 1);
    for (let p = 0; p < plates.length; p++) {
      if (((rules.plates[entry]! >> p) & 1) === 0) continue;
      const out = plates[p]!.out.data;
      const value = plates[p]!.from.data[y * width + first]!;
      if (rules.holdsBack[entry] === 1) {
        for (let i = start; i < end; i++) if (labels[i] === target && out[i]! > value) out[i] = value;
      } else {
        for (let i = start; i < end; i++) if (labels[i] === target && out[i]! < value) out[i] = value;
      }
    }
  }
}
