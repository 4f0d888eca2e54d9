import type { Lab } from '../graph/inks.ts';
import { labOfXyz, xyzOfLab } from './lab.ts';
import type { Xyz } from './spectrum.ts';
import { decodeSrgb, xyzOfLinear } from './srgb.ts';

/** What the white of a rough stands for: the bare paper, or a white of its own. */
export type RoughWhite = 'paper' | 'screen';

/**
 * The colour that a place should print (Lab D50, absolute) where a rough shows an sRGB colour. Where white stands for
 * paper, X, Y and Z are each scaled by paper over white, so that every colour is meant as it looks beside the paper.
 *
 * @param colour 0xrrggbb
 */
export function wantedLab(colour: number, white: RoughWhite, paper: Readonly<Lab>): Lab {
  const light = (shift: number) => decodeSrgb(((colour >> shift) & 255) / 255);
  const xyz = xyzOfLinear([light(16), light(8), light(0)]);
  if (white === 'screen') return labOfXyz(xyz);
  const ground = xyzOfLab(paper);
  const bare = xyzOfLinear([1, 1, 1]);
  return labOfXyz(xyz.map((value, axis) => (value * ground[axis]!) / bare[axis]!) as Xyz);
}
