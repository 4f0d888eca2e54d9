import { pastEqual, wordsOf } from './byte-runs.ts';
import { components } from './components.ts';
import { BEYOND, DEEP, NEAR } from './near-distance.ts';
import { NumberList } from './number-list.ts';
import { crossPlateaus, fillTops, pointerTo, resolve, settleContests } from './plateaus.ts';

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
  resolveAll(args, at);
  return first.values().slice();
}

/** Lets NEAR pixels point uphill, and notes the first pixels of seeds; returns the pixels without a higher neighbour. */
function pointUphill({ distance2, zones, width, height }: BasinsArgs, at: Int32Array, first: NumberList) {
  const flat = new NumberList();
  const words = wordsOf(zones);
  const lastRow = (height - 1) * width;
  for (let row = 0; row <= lastRow; row += width) {
    const end = row + width;
    for (let i = row; i < end; ) {
      if (zones[i] !== NEAR) {
        if (at[i] === first.length) first.push(i);
        i = pastEqual(zones, words, i, end);
        continue;
      }
      let steepest = -1;
      let best = distance2[i]!;
      const north = row > 0 ? distance2[i - width]! : 0;
      const west = i > row ? distance2[i - 1]! : 0;
      const east = i + 1 < end ? distance2[i + 1]! : 0;
      const south = row < lastRow ? distance2[i + width]! : 0;
      if (north > best) {
        best = north;
        steepest = i - width;
      }
      if (west > best) {
        best = west;
        steepest = i - 1;
      }
      if (east > best) {
        best = east;
        steepest = i + 1;
      }
      if (south > best) steepest = i + width;
      if (steepest < 0) flat.push(i);
      else at[i] = pointerTo(steepest);
      i++;
    }
  }
  return flat.values();
}

function resolveAll({ zones, width, height }: BasinsArgs, at: Int32Array): void {
  const words = wordsOf(zones);
  for (let row = 0; row < width * height; row += width) {
    const end = row + width;
    for (let i = row; i < end; ) {
      if (zones[i] !== NEAR) {
        i = pastEqual(zones, words, i, end);
        continue;
      }
      if (at[i]! < 0) resolve(at, i);
      i++;
    }
  }
}
