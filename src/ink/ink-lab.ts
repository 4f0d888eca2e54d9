import type { Ink, Lab } from '../graph/inks.ts';
import { labOfXyz } from './lab.ts';
import { xyzOfHex } from './srgb.ts';

/**
 * The Lab (D50, absolute) of an ink's solid, given as Lab or as a screen colour.
 * Throws when the ink has neither, or a hex that is not #rrggbb.
 */
export function resolveInkLab(ink: Ink): Lab {
  if (ink.lab) return ink.lab;
  if (ink.hex) return labOfXyz(xyzOfHex(ink.hex));
  throw new RangeError(`ink ${ink.id} has no colour: give it lab or hex`);
}
