import { latticeOf, mix } from './lattice.ts';
import { smooth } from './tile-row.ts';

export interface PressMapArgs {
  /** Cells of the map. */
  width: number;
  height: number;
  cellMm: number;
  /** Unit vector from the feed edge into the sheet. */
  along: readonly [number, number];
  /** Faults with a share of the ink they take at most, 0..1, and a size, mm. */
  tracks: { take: number; mm: number };
  starvation: { take: number; mm: number };
  streaks: { take: number; mm: number };
  pressure: { take: number; mm: number };
  seed: number;
}

/** A share of ink that each place of the sheet takes, 0..1, one number a cell: what changes slowly or in bands. */
export function pressMap(args: PressMapArgs): Float32Array<SharedArrayBuffer> {
  const { width, height, cellMm, along, tracks, starvation, streaks, pressure, seed } = args;
  const lattice = latticeOf(mix(1, seed));
  const noise = (x: number, y: number) => smooth(lattice, x + 128, y + 128) / 127;
  const start = mix(3, seed) / 0x1000000;
  const map = new Float32Array(new SharedArrayBuffer(width * height * 4));
  const feedMm = (along[0] === 0 ? height : width) * cellMm;
  const acrossMm = (along[0] === 0 ? width : height) * cellMm;
  const middles = trackMiddles(acrossMm, seed);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const [x, y] = [(column + 0.5) * cellMm, (row + 0.5) * cellMm];
      const [fromX, fromY] = [along[0] < 0 ? feedMm - x : x, along[1] < 0 ? feedMm - y : y];
      const [feed, across] = along[0] === 0 ? [fromY, x] : [fromX, y];
      let kept = 1;
      if (tracks.take > 0) kept -= tracks.take * trackAt(middles, tracks.mm, feed, across, noise);
      if (starvation.take > 0) {
        const short = Math.max(
          0,
          1 - (feedMm - feed) / (starvation.mm * (1 + 0.5 * noise(start, across / 18))),
        );
        kept -= starvation.take * short * (0.7 + 0.3 * noise(across / 7, start + feed / 60));
      }
      if (streaks.take > 0) {
        const lane = noise(across / (streaks.mm * 0.7), start + feed / 160);
        kept -= streaks.take * Math.max(0, lane * 2 - 0.8);
      }
      if (pressure.take > 0) {
        const wave = pressure.mm / 2;
        kept -= pressure.take * (0.5 + 0.5 * noise(start + x / wave, start * 2 + y / wave));
      }
      map[row * width + column] = Math.max(0, kept);
    }
  return map;
}

/** Where the two or three rollers run, mm across the sheet. */
function trackMiddles(acrossMm: number, seed: number): number[] {
  const chance = (n: number) => mix(n, seed) / 0x100000000;
  const count = 2 + (mix(11, seed) & 1);
  return Array.from({ length: count }, (_, k) => ((k + 0.3 + 0.4 * chance(12 + k)) * acrossMm) / count);
}

/** Strongest in the middle third, with a mottled rim. */
function trackAt(
  middles: readonly number[],
  widthMm: number,
  feed: number,
  across: number,
  noise: (x: number, y: number) => number,
): number {
  let most = 0;
  for (const middle of middles) {
    const away = Math.abs(across - middle) + 0.12 * widthMm * noise(feed / 9, middle);
    most = Math.max(most, Math.min(1, Math.max(0, (widthMm / 2 - away) / (widthMm / 6))));
  }
  return most * (0.75 + 0.25 * noise(feed / 25, across / 3));
}
