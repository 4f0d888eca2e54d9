/**
 * Exponential, logarithm, power, cube root, sine and arc tangent from + - x / alone.
 *
 * Engines may differ in the last bit of `Math.pow`, `Math.exp` and their kin, but not in IEEE 754
 * arithmetic; colours computed with these have the same bits everywhere. Relative error below 1e-14 over
 * the range colour needs (powers of numbers from 1e-12 to 1e6).
 */
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
const TAYLOR_TERMS = 14;
const SERIES_TERMS = 12;

/** `x` times 2 to the whole power `n`, exact. */
function scale(x: number, n: number): number {
  let y = x;
  for (let i = n; i > 0; i--) y *= 2;
  for (let i = n; i < 0; i++) y *= 0.5;
  return y;
}

/** e to the `x`; 0 below -700 and Infinity above 700. */
export function exp(x: number): number {
  if (x < -700) return 0;
  if (x > 700) return Infinity;
  const n = Math.floor(x / (LN2_HIGH + LN2_LOW) + 0.5);
  const r = x - n * LN2_HIGH - n * LN2_LOW;
  let sum = 1;
  for (let term = TAYLOR_TERMS; term > 0; term--) sum = 1 + (sum * r) / term;
  return scale(sum, n);
}

/** Natural logarithm of a finite `x` > 0. */
export function log(x: number): number {
  let m = x;
  let n = 0;
  for (; m < Math.SQRT1_2; n--) m *= 2;
  for (; m >= 2 * Math.SQRT1_2; n++) m *= 0.5;
  const s = (m - 1) / (m + 1);
  let sum = 0;
  for (let k = SERIES_TERMS; k >= 0; k--) sum = sum * s * s + 1 / (2 * k + 1);
  return 2 * s * sum + n * LN2_LOW + n * LN2_HIGH;
}

/** `x` to the `e` for x >= 0; 0 to the 0 is 1. */
export function power(x: number, e: number): number {
  if (e === 0) return 1;
  if (e === 1 || x === 0) return x;
  return exp(e * log(x));
}

/** Cube root of `x` >= 0. */
export function cubeRoot(x: number): number {
  if (x === 0) return 0;
  const guess = exp(log(x) / 3);
  return guess - (guess - x / (guess * guess)) / 3;
}

/** Sine of an angle from -1.6 to 1.6, in radians. */
export function sine(x: number): number {
  const square = x * x;
  let sum = 1;
  for (let k = 2 * SERIES_TERMS; k > 0; k -= 2) sum = 1 - (sum * square) / (k * (k + 1));
  return x * sum;
}

/** The angle from -pi/2 to pi/2, in radians, whose tangent is `x`. */
export function arcTangent(x: number): number {
  let eighth = x;
  for (let halving = 0; halving < 3; halving++) eighth /= 1 + Math.sqrt(1 + eighth * eighth);
  const square = eighth * eighth;
  let sum = 0;
  for (let k = SERIES_TERMS; k >= 0; k--) sum = 1 / (2 * k + 1) - sum * square;
  return 8 * eighth * sum;
}
