import { pastEqual, wordsOf } from './byte-runs.ts';
import { components } from './components.ts';
import { BEYOND, DEEP, NEAR } from './near-distance.ts';
import { NumberList } from './number-list.ts';
import { crossPlateaus, levelNeighbours, pointerTo, resolve, settleContests } from './plateaus.ts';

export interface BasinsArgs {
  /** From `nearDistance`. */
  distance2: Uint16Array | Uint32Array;
  zones: Uint8Array;
  width: number;
  height: number;
  /** Receives one basin a free pixel, 1..count; 0 on line. */
  labels: Uint32Array;
}

/**
 * Parts the free pixels in basins of their distance to the line. Cores are the 4-connected areas farther from it
 * than half the gap, and level tops within it. Every other pixel points to its steepest 4-neighbour (of equals N, W,
 * E, S); level ground is crossed breadth first from pixels that point, equally short ways going to the lower basin.
 * Watershed by steepest descent: Meyer 1994, level ground as in Roerdink & Meijster 2000 (both from memory).
 *
 * @returns first pixel of each basin's core, index = basin, 0 unused: the basin with the earlier one is the lower
 */
export function basins(args: BasinsArgs): Uint32Array {
  const { distance2, zones, width, height, labels } = args;
  components({ data: zones, width, height, from: DEEP, to: BEYOND, neighbours: 4, labels });
  const at = new Int32Array(labels.buffer, labels.byteOffset, labels.length);
  const first = new NumberList();
  first.push(0);
  const flat = pointUphill(args, at, first);
  const contested = crossPlateaus(args, at, flat);
  fillTops(args, at, flat, first);
  settleContests(distance2, at, contested, first.values());
  forRuns(args, (i) => {
    if (zones[i] === NEAR) resolve(at, i);
  });
  return first.values().slice();
}

/** Calls `visit` with every pixel whose distance is known, and the first pixel of every run of others in a row. */
export function forRuns({ zones, width, height }: BasinsArgs, visit: (i: number) => void): void {
  const words = wordsOf(zones);
  for (let y = 0; y < height; y++) {
    const end = (y + 1) * width;
    let i = y * width;
    while (i < end) {
      visit(i);
      const known = zones[i] === NEAR || zones[i] === DEEP;
      i = known ? i + 1 : pastEqual(zones, words, i, end);
    }
  }
}

/** Notes the first pixels of seeds, and returns the pixels without a higher neighbour. */
function pointUphill(args: BasinsArgs, at: Int32Array, first: NumberList): Uint32Array {
  const { distance2, zones, width, height } = args;
  const flat = new NumberList();
  forRuns(args, (i) => {
    if (zones[i] !== NEAR) {
      if (at[i] === first.length) first.push(i);
      return;
    }
    const x = i % width;
    let steepest = -1;
    let best = distance2[i]!;
    const climb = (neighbour: number) => {
      if (distance2[neighbour]! <= best) return;
      best = distance2[neighbour]!;
      steepest = neighbour;
    };
    if (i >= width) climb(i - width);
    if (x > 0) climb(i - 1);
    if (x + 1 < width) climb(i + 1);
    if (i < width * (height - 1)) climb(i + width);
    if (steepest < 0) flat.push(i);
    else at[i] = pointerTo(steepest);
  });
  return flat.values();
}

/** Makes a basin of every level top that no way leads up from. */
function fillTops(args: BasinsArgs, at: Int32Array, flat: Uint32Array, first: NumberList): void {
  const open: number[] = [];
  for (const top of flat) {
    if (at[top] !== 0) continue;
    const basin = first.length;
    first.push(top);
    at[top] = basin;
    open.push(top);
    while (open.length > 0)
      levelNeighbours(args, open.pop()!, (i) => {
        if (at[i] !== 0) return;
        at[i] = basin;
        open.push(i);
      });
  }
}
