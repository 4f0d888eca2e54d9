import type { Spectrum, Xyz } from './spectrum.ts';
import { WEIGHTS } from './weights.ts';

/** For each of X, Y, Z an upper triangle, row by row, off-diagonal entries doubled. */
export type QuadraticForms = readonly [Float64Array, Float64Array, Float64Array];

/**
 * A halftone's XYZ without spectra: with Yule-Nielsen n = 2, sum over bands of weight (sum w sqrt(P))^2 is
 * w' A w with A = sum over bands of weight sqrt(P) sqrt(P)', one A for each of X, Y, Z.
 *
 * @param roots square roots of the reflectance of every primary.
 */
export function quadraticForms(roots: readonly Spectrum[]): QuadraticForms {
  const triangle = (axis: 0 | 1 | 2): Float64Array => {
    const entries = new Float64Array((roots.length * (roots.length + 1)) / 2);
    let at = 0;
    for (let i = 0; i < roots.length; i++) {
      for (let j = i; j < roots.length; j++) {
        let sum = 0;
        for (let band = 0; band < WEIGHTS.length; band++) {
          sum += WEIGHTS[band]![axis] * roots[i]![band]! * roots[j]![band]!;
        }
        entries[at++] = i === j ? sum : 2 * sum;
      }
    }
    return entries;
  };
  return [triangle(0), triangle(1), triangle(2)];
}

/** w' A w for X, Y and Z; `weights` has one entry per primary. */
export function xyzOfForms([formX, formY, formZ]: QuadraticForms, weights: Float64Array): Xyz {
  let x = 0;
  let y = 0;
  let z = 0;
  let at = 0;
  for (let i = 0; i < weights.length; i++) {
    const weight = weights[i]!;
    for (let j = i; j < weights.length; j++, at++) {
      const product = weight * weights[j]!;
      x += product * formX[at]!;
      y += product * formY[at]!;
      z += product * formZ[at]!;
    }
  }
  return [x, y, z];
}
