import type { Affine } from '../offset.ts';
import type { LabelPlane } from '../plane.ts';

export interface OverlapArgs {
  before: LabelPlane;
  after: LabelPlane;
  /** Where a pixel of the new drawing lies on the old. */
  place: Affine;
  /** Further shift by new label, px of the old drawing; index 0 unused. */
  shiftX: Float64Array;
  shiftY: Float64Array;
  /** By new label: 1 where it is to be counted. */
  wanted: Uint8Array;
}

/** How many pixels of new regions lie on old ones: parallel lists of new label, old label (0 none), pixels. */
export interface Overlaps {
  after: Uint32Array;
  before: Uint32Array;
  count: Uint32Array;
}

/** Counts which old region lies under each pixel of new ones. */
export function countOverlaps({ before, after, place, shiftX, shiftY, wanted }: OverlapArgs): Overlaps {
  const { xx, xy, x0, yx, yy, y0 } = place;
  const counts = new Map<number, number>();
  const size = 2 ** 26;
  let key = -1;
  let run = 0;
  const flush = () => {
    if (run > 0) counts.set(key, (counts.get(key) ?? 0) + run);
    run = 0;
  };
  for (let y = 0; y < after.height; y++) {
    const row = y * after.width;
    for (let x = 0; x < after.width; x++) {
      const label = after.data[row + x]!;
      if (label === 0 || wanted[label] === 0) continue;
      const u = Math.floor(xx * x + xy * y + x0 + shiftX[label]! + 0.5);
      const v = Math.floor(yx * x + yy * y + y0 + shiftY[label]! + 0.5);
      const inside = u >= 0 && v >= 0 && u < before.width && v < before.height;
      const next = label * size + (inside ? before.data[v * before.width + u]! : 0);
      if (next !== key) {
        flush();
        key = next;
      }
      run++;
    }
  }
  flush();
  const keys = [...counts.keys()].sort((a, b) => a - b);
  return {
    after: Uint32Array.from(keys, (each) => Math.floor(each / size)),
    before: Uint32Array.from(keys, (each) => each % size),
    count: Uint32Array.from(keys, (each) => counts.get(each)!),
  };
}
