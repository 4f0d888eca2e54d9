import type { Lab } from '../graph/inks.ts';
import { cubeRoot } from './arithmetic.ts';
import type { Xyz } from './spectrum.ts';
import { D50 } from './weights.ts';

/** CIE 15: where the cube root gives way to a straight line, as exact fractions. */
const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

const forward = (v: number): number => (v > EPSILON ? cubeRoot(v) : (KAPPA * v + 16) / 116);
const backward = (f: number): number => (f * f * f > EPSILON ? f * f * f : (116 * f - 16) / KAPPA);

/** CIE Lab (D50) of an XYZ with Y = 1 white. */
export function labOfXyz([x, y, z]: Readonly<Xyz>): Lab {
  const fx = forward(x / D50[0]);
  const fy = forward(y / D50[1]);
  const fz = forward(z / D50[2]);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** XYZ with Y = 1 white of a CIE Lab (D50). May be negative for a Lab that no surface can have. */
export function xyzOfLab([l, a, b]: Readonly<Lab>): Xyz {
  const fy = (l + 16) / 116;
  return [D50[0] * backward(fy + a / 500), D50[1] * backward(fy), D50[2] * backward(fy - b / 200)];
}
