import { arcTangent, exp, sine } from './arithmetic.ts';

const COS_30 = Math.sqrt(3) / 2;
const DEGREE = Math.PI / 180;
/** Cosine and sine of 6, 63 and 275 degrees. */
const [COS_6, SIN_6] = [0.9945218953682733, 0.10452846326765347];
const [COS_63, SIN_63] = [0.4539904997395468, 0.8910065241883679];
const [COS_275, SIN_275] = [0.08715574274765817, -0.9961946980917455];
const POWER_25_7 = 6_103_515_625;
/** Beyond 5 widths from blue the turn of the ellipses is below 1e-9. */
const COS_125 = -0.5735764363510462;
const BLUE_WIDTH = 25 * DEGREE;
const MOST_TURN = 60 * DEGREE;

const seventh = (x: number): number => x * x * x * x * x * x * x;

/** S_L of the formula: how much coarser lightness is seen at a mean lightness. */
export function lightnessScale(mean: number): number {
  const off = (mean - 50) * (mean - 50);
  return 1 + (0.015 * off) / Math.sqrt(20 + off);
}

/** R_T over R_C of the formula, for the direction of the mean hue; the formula takes 0 degrees as far from 275. */
function turnOf(cos: number, sin: number): number {
  const along = cos * COS_275 + sin * SIN_275;
  if (along < COS_125 || (sin >= 0 && cos > 0)) return 0;
  const off = (2 * arcTangent((sin * COS_275 - cos * SIN_275) / (1 + along))) / BLUE_WIDTH;
  return -sine(MOST_TURN * exp(-off * off));
}

/**
 * CIEDE2000 difference of two Lab of one white, kL = kC = kH = 1, symmetric in the two.
 *
 * Hues enter as directions and multiples of angles by addition theorems, so that the result has the same bits
 * in every engine.
 *
 * Source: G. Sharma, W. Wu, E. N. Dalal, Color Research & Application 30 (2005) 21-30.
 */
export function ciede2000(l1: number, a1: number, b1: number, l2: number, a2: number, b2: number): number {
  const lightness = (l2 - l1) / lightnessScale((l1 + l2) / 2);
  const fullness = seventh((Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2);
  const stretch = 1.5 - 0.5 * Math.sqrt(fullness / (fullness + POWER_25_7));
  const x1 = a1 * stretch;
  const x2 = a2 * stretch;
  const c1 = Math.sqrt(x1 * x1 + b1 * b1);
  const c2 = Math.sqrt(x2 * x2 + b2 * b2);
  const c = (c1 + c2) / 2;
  const chroma = (c2 - c1) / (1 + 0.045 * c);
  const straight = lightness * lightness + chroma * chroma;
  const product = c1 * c2;
  if (product === 0) return Math.sqrt(straight);

  const dot = x1 * x2 + b1 * b2;
  const cross = x1 * b2 - x2 * b1;
  /** Of opposite hues the formula takes the one below 180 degrees as the first. */
  const forward = cross > 0 || (cross === 0 && dot < 0 && (b1 > 0 || (b1 === 0 && x1 > 0)));
  const sign = forward ? 1 : -1;
  let cos = x1 / c1 + x2 / c2;
  let sin = b1 / c1 + b2 / c2;
  if (dot < 0) {
    cos = sign * (b2 / c2 - b1 / c1);
    sin = sign * (x1 / c1 - x2 / c2);
  }
  const length = Math.sqrt(cos * cos + sin * sin);
  cos /= length;
  sin /= length;

  const cos2 = cos * cos - sin * sin;
  const sin2 = 2 * sin * cos;
  const cos3 = cos2 * cos - sin2 * sin;
  const sin3 = sin2 * cos + cos2 * sin;
  const cos4 = cos2 * cos2 - sin2 * sin2;
  const sin4 = 2 * sin2 * cos2;
  const t =
    1 -
    0.17 * (cos * COS_30 + sin * 0.5) +
    0.24 * cos2 +
    0.32 * (cos3 * COS_6 - sin3 * SIN_6) -
    0.2 * (cos4 * COS_63 + sin4 * SIN_63);
  const apart = (x2 - x1) * (x2 - x1) + (b2 - b1) * (b2 - b1) - (c2 - c1) * (c2 - c1);
  const hue = (sign * Math.sqrt(Math.max(0, apart))) / (1 + 0.015 * c * t);
  const blue = seventh(c);
  const turn = 2 * Math.sqrt(blue / (blue + POWER_25_7)) * turnOf(cos, sin);
  return Math.sqrt(Math.max(0, straight + hue * hue + turn * chroma * hue));
}
