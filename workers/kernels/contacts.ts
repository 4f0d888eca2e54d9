import { type BasinsArgs, forRuns } from './basins.ts';
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
  const p = new NumberList();
  const q = new NumberList();
  const saddle = new NumberList();
  const peak = new Float64Array(count + 1);
  const meet = (i: number, j: number) => {
    if (labels[j] === 0 || labels[i] === labels[j]) return;
    p.push(i);
    q.push(j);
    saddle.push(Math.min(distance2[i]!, distance2[j]!));
  };
  forRuns(args, (i) => {
    const zone = zones[i]!;
    if (zone === ON_LINE) return;
    const basin = labels[i]!;
    if (zone === BEYOND) peak[basin] = Number.POSITIVE_INFINITY;
    else if (distance2[i]! > peak[basin]!) peak[basin] = distance2[i]!;
    if (zone !== NEAR) return;
    const x = i % width;
    if (x > 0) meet(i, i - 1);
    if (i >= width) meet(i, i - width);
    if (x + 1 < width && zones[i + 1]! >= DEEP) meet(i, i + 1);
    if (i < width * (height - 1) && zones[i + width]! >= DEEP) meet(i, i + width);
  });
  return {
    contacts: { p: p.values().slice(), q: q.values().slice(), saddle: saddle.values().slice() },
    peak,
  };
}
