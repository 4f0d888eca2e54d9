import { pastEqual, wordsOf } from './byte-runs.ts';
import { rootOf, unite } from './union.ts';

/** Which pixels belong together: those whose byte lies in `from..to`, joined over 4 or 8 neighbours. */
export interface ComponentsArgs {
  data: Uint8Array;
  width: number;
  height: number;
  from: number;
  to: number;
  neighbours: 4 | 8;
  /** Receives one label a pixel: 0 outside, else 1..count in raster order of each component's first pixel. */
  labels: Uint32Array;
}

/**
 * Labels connected components by runs: two passes, one union over the runs of neighbouring rows.
 * Method: Rosenfeld & Pfaltz 1966, in the run-length form of He, Chao & Suzuki 2008 (both from memory).
 *
 * @returns the number of components
 */
export function components(args: ComponentsArgs): number {
  const { data, width, height, from, to, labels } = args;
  const reach = args.neighbours === 8 ? 1 : 0;
  let starts = new Uint32Array(1 << 16);
  let ends = new Uint32Array(1 << 16);
  let parent = new Uint32Array(1 << 16);
  const rowStart = new Uint32Array(height + 1);
  const span = to - from;
  const words = wordsOf(data);
  let runs = 0;

  for (let y = 0; y < height; y++) {
    rowStart[y] = runs;
    const row = y * width;
    const end = row + width;
    let above = y === 0 ? 0 : rowStart[y - 1]!;
    const aboveEnd = y === 0 ? 0 : runs;
    let i = row;
    while (i < end) {
      while (i < end && (data[i]! - from) >>> 0 > span) i = pastEqual(data, words, i, end);
      if (i === end) break;
      const start = i - row;
      while (i < end && (data[i]! - from) >>> 0 <= span) i = pastEqual(data, words, i, end);
      if (runs === starts.length) {
        starts = grown(starts);
        ends = grown(ends);
        parent = grown(parent);
      }
      const run = runs++;
      starts[run] = start;
      ends[run] = i - row;
      parent[run] = run;
      while (above < aboveEnd && ends[above]! + reach <= start) above++;
      let root = run;
      for (let k = above; k < aboveEnd && starts[k]! < i - row + reach; k++) root = unite(parent, root, k);
    }
  }
  rowStart[height] = runs;

  let count = 0;
  const label = new Uint32Array(runs);
  for (let run = 0; run < runs; run++) {
    const root = parent[run]!;
    label[run] = root === run ? ++count : label[rootOf(parent, run)]!;
  }
  for (let y = 0; y < height; y++)
    writeRow(labels, y * width, width, starts, ends, label, rowStart[y]!, rowStart[y + 1]!);
  return count;
}

function writeRow(
  labels: Uint32Array,
  row: number,
  width: number,
  starts: Uint32Array,
  ends: Uint32Array,
  label: Uint32Array,
  first: number,
  last: number,
): void {
  let x = row;
  for (let run = first; run < last; run++) {
    const start = row + starts[run]!;
    const end = row + ends[run]!;
    paint(labels, 0, x, start);
    paint(labels, label[run]!, start, end);
    x = end;
  }
  paint(labels, 0, x, row + width);
}

/** Below this length a loop beats the call of `fill`. */
const SHORT = 24;

function paint(labels: Uint32Array, label: number, from: number, to: number): void {
  if (to - from > SHORT) labels.fill(label, from, to);
  else for (let i = from; i < to; i++) labels[i] = label;
}

function grown(list: Uint32Array<ArrayBuffer>): Uint32Array<ArrayBuffer> {
  const larger = new Uint32Array(list.length * 2);
  larger.set(list);
  return larger;
}
