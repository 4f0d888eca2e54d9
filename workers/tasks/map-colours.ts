import type { Region } from '../engine/values.ts';

/** Quiet paper tones, far enough apart to tell neighbours: red, green, blue. */
const TONES = [
  [222, 205, 178],
  [190, 208, 200],
  [226, 190, 176],
  [198, 200, 220],
  [214, 216, 180],
  [216, 188, 208],
  [178, 196, 182],
] as const;

/**
 * A tone for each region, as on a map: no two neighbours share one while tones last.
 *
 * @returns `[red, green, blue]` by label; index 0 is paper
 */
export function mapColours(table: readonly Region[]): (readonly [number, number, number])[] {
  const tones = new Int32Array(table.length + 1).fill(-1);
  for (const { label, neighbours } of table) {
    const taken = new Set(neighbours.map((neighbour) => tones[neighbour.label]));
    const free = TONES.findIndex((_, tone) => !taken.has((tone + label) % TONES.length));
    tones[label] = (Math.max(0, free) + label) % TONES.length;
  }
  return [[255, 255, 255], ...table.map(({ label }) => TONES[tones[label]!]!)];
}
