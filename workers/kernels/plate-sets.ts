import { wordsOf } from './byte-runs.ts';
import type { Plane } from './plane.ts';

export interface PlateSetsArgs {
  plates: readonly Plane[];
  /** Coverage from which a plate counts as printing. */
  least: number;
  /** Receives bit i where plate i prints. */
  out: Uint16Array;
}

/** Which plates print in each pixel, for rows `from..to`. */
export function plateSets({ plates, least, out }: PlateSetsArgs, from: number, to: number): void {
  const width = plates[0]!.width;
  for (let y = from; y < to; y++) {
    const row = y * width;
    out.fill(0, row, row + width);
    for (const [plate, { data }] of plates.entries())
      addPlate(data, 2 ** plate, least, out, row, row + width);
  }
}

/** Adds one plate's bit, four pixels at a time where all are paper or all are solid. */
function addPlate(
  data: Uint8Array,
  bit: number,
  least: number,
  out: Uint16Array,
  from: number,
  end: number,
): void {
  const words = wordsOf(data);
  for (let i = from; i < end; ) {
    const word = words !== null && (i & 3) === 0 && i + 4 <= end ? words[i >> 2]! : -1;
    if (word === 0) {
      i += 4;
      continue;
    }
    const stop = word === -1 ? i + 1 : i + 4;
    for (; i < stop; i++) if (data[i]! >= least) out[i]! |= bit;
  }
}
