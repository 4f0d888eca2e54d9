import type { Lab } from '../graph/inks.ts';
import { labOfXyz, xyzOfLab } from './lab.ts';
import type { Xyz } from './spectrum.ts';
import { decodeSrgb, xyzOfLinear } from './srgb.ts';

type Rgb = readonly [number, number, number];

/** A white darker than this, 0..255, is no paper in light. */
const LEAST_WHITE = 40;
/** A channel above this is burnt out. */
const BURNT = 253;

/**
 * The colour of a spot of a photographed or scanned print: the light of the photo is taken out by its paper white,
 * channel by channel of linear sRGB, and the paper's own colour put in.
 *
 * The scaling is von Kries' (1902) in sRGB's primaries: a hint, not a measurement.
 *
 * @param spot red, green, blue as the picture holds them, 0..255
 * @param white the same of bare paper in the same light
 * @param paper Lab of that paper, D50, absolute
 * @throws RangeError that says what to do when the white cannot be the paper
 */
export function labFromPhoto(spot: Rgb, white: Rgb, paper: Readonly<Lab>): Lab {
  if (Math.min(...white) < LEAST_WHITE)
    throw new RangeError('that is too dark for bare paper; point at paper without ink');
  if (Math.max(...white) > BURNT && Math.min(...white) > BURNT)
    throw new RangeError('the paper is burnt out in this picture; take it again with less light');
  const linear = spot.map((value, band) => decodeSrgb(value / 255) / decodeSrgb(white[band]! / 255));
  const relative = xyzOfLinear(linear as [number, number, number]);
  const ground = xyzOfLab(paper);
  const neutral = xyzOfLinear([1, 1, 1]);
  return labOfXyz(relative.map((value, axis) => (value / neutral[axis]!) * ground[axis]!) as Xyz);
}
