import type { BasinsArgs } from './basins.ts';
import { pastEqual, wordsOf } from './byte-runs.ts';
import { BEYOND, DEEP, NEAR, ON_LINE } from './near-distance.ts';
import { NumberList } from './number-list.ts';

/** Where basins touch, one entry a pair of 4-neighbours in different basins. */
export interface Contacts {
  /** The two pixels, the NEAR one first where only one is. */
  p: Uint32Array;
  q: Uint32Array;
  /** The lesser squared distance of the two, px2. */
  saddle: Uint32Array;
}

export interface Survey {
  contacts: Contacts;
  /** Greatest squared distance in each basin, px2; infinite where it is beyond the limit. */
  peak: Float64Array;
}

/** Touching pixels of different basins, and the peak of every basin. */
export function surveyBasins(args: BasinsArgs, count: number): Survey {
  const { distance2, zones, width, height, labels } = args;
  const words = wordsOf(zones);
  const lastRow = (height - 1) * width;
  const list = { p: new NumberList(), q: new NumberList(), saddle: new NumberList() };
  const peak = new Float64Array(count + 1);
  const meet = (i: number, j: number) => {
    list.p.push(i);
    list.q.push(j);
    list.saddle.push(Math.min(distance2[i]!, distance2[j]!));
  };
  for (let row = 0; row <= lastRow; row += width) {
    const end = row + width;
    for (let i = row; i < end; ) {
      const zone = zones[i]!;
      if (zone === ON_LINE || zone === BEYOND) {
        if (zone === BEYOND) peak[labels[i]!] = Number.POSITIVE_INFINITY;
        i = pastEqual(zones, words, i, end);
        continue;
      }
      const basin = labels[i]!;
      if (distance2[i]! > peak[basin]!) peak[basin] = distance2[i]!;
      if (zone === NEAR) {
        const west = i > row ? labels[i - 1]! : 0;
        const north = row > 0 ? labels[i - width]! : 0;
        if (west !== 0 && west !== basin) meet(i, i - 1);
        if (north !== 0 && north !== basin) meet(i, i - width);
        if (i + 1 < end && zones[i + 1]! >= DEEP && labels[i + 1] !== basin) meet(i, i + 1);
        if (row < lastRow && zones[i + width]! >= DEEP && labels[i + width] !== basin) meet(i, i + width);
      }
      i++;
    }
  }
  const contacts = {
    p: list.p.values().slice(),
    q: list.q.values().slice(),
    saddle: list.saddle.values().slice(),
  };
  return { contacts, peak };
}
