import type { Ink, Surface } from '../graph/inks.ts';
import { grownTint, SURFACE_GAIN } from './tints.ts';
import { alongCurve, coverageOfTone, gainOfToneIncrease, type ToneScale } from './tone.ts';

/**
 * Coverage on paper, 0..1, of a nominal tint 0..1 of an ink: by the ink's own curve, by its own dot gain or the
 * gain that gives its tone gain, or by the gain usual on the surface. This is the one place where tints grow.
 *
 * @param scale how the ink's tints read on this paper
 */
export function growthOf(ink: Ink, surface: Surface, scale: ToneScale): (tint: number) => number {
  const { gain, toneGainPercent, curvePercent } = ink;
  if (curvePercent) {
    const curve = curvePercent.map(([film, print]) => [film / 100, print / 100] as const);
    return (tint) => coverageOfTone(scale, alongCurve(curve, tint));
  }
  const solved = toneGainPercent === undefined ? undefined : gainOfToneIncrease(scale, toneGainPercent / 100);
  const grown = solved ?? gain ?? SURFACE_GAIN[surface];
  return (tint) => grownTint(tint, grown);
}
