import type { Surface } from '../graph/inks.ts';
import type { Spectrum } from './spectrum.ts';

/** Dot gain where the ink names none: the g of `grownTint`. */
export const SURFACE_GAIN: Record<Surface, number> = { coated: 0, uncoated: 0.07, newsprint: 0.17 };

/**
 * Coverage on paper of a nominal tint: t + 4 g t (1 - t), held within 0..1; g is the growth at 50%.
 * This is physical growth; the optical part of dot gain is in the Yule-Nielsen factor.
 */
export function grownTint(tint: number, gain: number): number {
  return Math.min(1, Math.max(0, tint + 4 * gain * tint * (1 - tint)));
}

/**
 * Share of the paper that each overprint covers when dots of the inks fall at random.
 *
 * Weight of a set of inks = product of a over the inks in it and of 1 - a over the others. Source:
 * E. Demichel, Procede 26 (1924) (from memory).
 *
 * @param coverages 0..1, one per ink.
 * @returns 2^n weights summing to 1; bit i of the index says that ink i is in the set.
 */
export function demichelWeights(coverages: ArrayLike<number>): Float64Array {
  const weights = new Float64Array(2 ** coverages.length);
  weights[0] = 1;
  for (let ink = 0; ink < coverages.length; ink++) {
    const bit = 2 ** ink;
    const coverage = coverages[ink]!;
    for (let set = 0; set < bit; set++) {
      weights[bit + set] = weights[set]! * coverage;
      weights[set]! *= 1 - coverage;
    }
  }
  return weights;
}

/**
 * Reflectance of a halftone from its primaries: (sum of w sqrt(P))^2 per band.
 *
 * Sources: H. E. J. Neugebauer, Z. wiss. Photogr. 36 (1937); J. A. C. Yule and W. J. Nielsen, TAGA Proc. 3
 * (1951), their factor n = 2 here; J. A. S. Viggiano, TAGA Proc. (1985), spectral form (all from memory).
 *
 * @param weights one per primary, summing to 1.
 * @param rootOf square roots of the reflectance of a primary; asked only where the weight is not 0.
 */
export function halftone(weights: Float64Array, rootOf: (set: number) => Spectrum): Spectrum {
  let root: Spectrum | null = null;
  for (let set = 0; set < weights.length; set++) {
    const weight = weights[set]!;
    if (weight === 0) continue;
    const primary = rootOf(set);
    root ??= new Float64Array(primary.length);
    for (let band = 0; band < primary.length; band++) root[band]! += weight * primary[band]!;
  }
  return (root ?? new Float64Array()).map((value) => value * value);
}
