import { power } from './arithmetic.ts';
import type { Xyz } from './spectrum.ts';

/**
 * sRGB (IEC 61966-2-1) to and from XYZ under D50.
 *
 * The matrices hold the sRGB primaries and the white x 0.3127, y 0.3290, adapted to the ICC D50 white
 * (0.9642, 1, 0.8249) with the Bradford transform; #ffffff is therefore exactly Lab 100, 0, 0.
 */
const TO_XYZ = [
  [0.436041251616051, 0.3851129107981554, 0.14304583758579356],
  [0.22248454022947745, 0.7169050786084573, 0.06061038116206526],
  [0.013920187471375392, 0.09706723869712401, 0.7139125738315006],
] as const;

const FROM_XYZ = [
  [3.134186364236819, -1.6172089589982748, -0.49069406400638393],
  [-0.9787485041906944, 1.9161300967735873, 0.03343339915999554],
  [0.07196392780224674, -0.22899387345320327, 1.4057537328964445],
] as const;

export type Triple = [number, number, number];

const times = (m: readonly (readonly [number, number, number])[], [a, b, c]: Readonly<Triple>): Triple => [
  m[0]![0] * a + m[0]![1] * b + m[0]![2] * c,
  m[1]![0] * a + m[1]![1] * b + m[1]![2] * c,
  m[2]![0] * a + m[2]![1] * b + m[2]![2] * c,
];

/** Linear light 0..1 to the encoded value 0..1; negative light is kept odd-symmetric. */
export function encodeSrgb(linear: number): number {
  const light = Math.abs(linear);
  const encoded = light <= 0.0031308 ? 12.92 * light : 1.055 * power(light, 1 / 2.4) - 0.055;
  return linear < 0 ? -encoded : encoded;
}

/** Encoded value 0..1 to linear light 0..1. */
export function decodeSrgb(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : power((encoded + 0.055) / 1.055, 2.4);
}

/** Linear sRGB, unclipped: below 0 or above 1 where the screen cannot show the colour. */
export const linearOfXyz = (xyz: Readonly<Xyz>): Triple => times(FROM_XYZ, xyz);

/** XYZ (D50) of linear sRGB; 1, 1, 1 is the D50 white with Y = 1. */
export const xyzOfLinear = (linear: Readonly<Triple>): Xyz => times(TO_XYZ, linear);

/** XYZ (D50, Y = 1) of a colour written as #rrggbb. Throws when it is written otherwise. */
export function xyzOfHex(hex: string): Xyz {
  const digits = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex);
  if (!digits) throw new RangeError(`${hex} is not a colour: write it as #rrggbb`);
  const light = (at: number): number => decodeSrgb(Number.parseInt(digits[at]!, 16) / 255);
  return xyzOfLinear([light(1), light(2), light(3)]);
}
