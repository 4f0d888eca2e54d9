import type { Ink, Stock } from '../graph/inks.ts';
import { growthOf } from './growth.ts';
import { resolveInkLab } from './ink-lab.ts';
import { xyzOfLab } from './lab.ts';
import { swatchOf } from './swatch.ts';
import { toneScaleOf } from './tone.ts';

/** Halvings of the search: finer than a 16-bit share. */
const HALVINGS = 24;

/**
 * The dot that grows to a tint on the print: the tone curve of an ink turned round, by halving. Where a tint cannot
 * be reached by any dot, the one that comes nearest.
 *
 * @param stock the paper printed on
 * @returns share of the plate, 0..1, for a tint 0..1; paper stays paper and solid stays solid
 */
export function dotForTint(ink: Ink, stock: Stock): (tint: number) => number {
  const reflectance = (lab: Stock['lab']) => swatchOf(xyzOfLab(lab)).reflectance;
  const scale = toneScaleOf(reflectance(stock.lab), reflectance(resolveInkLab(ink)));
  const growth = growthOf(ink, stock.surface, scale);
  return (tint) => {
    if (tint <= 0 || tint >= 1) return tint <= 0 ? 0 : 1;
    let [low, high] = [0, 1];
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (low + high) / 2;
      if (growth(middle) < tint) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
}
