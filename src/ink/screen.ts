import type { Lab } from '../graph/inks.ts';
import { xyzOfLab } from './lab.ts';
import type { Xyz } from './spectrum.ts';
import { encodeSrgb, linearOfXyz, type Triple } from './srgb.ts';

export interface ScreenColour {
  /** The nearest sRGB by clipping each channel, #rrggbb. */
  hex: string;
  /** False when clipping moved a channel by more than half a step of 8 bits: flag it beside the swatch. */
  onScreen: boolean;
}

const hexByte = (byte: number): string => byte.toString(16).padStart(2, '0');

/** Encoded sRGB of an XYZ (D50, Y = 1) on the scale 0..255, neither rounded nor clipped. */
export function screenValuesOf(xyz: Readonly<Xyz>): Triple {
  const [r, g, b] = linearOfXyz(xyz);
  return [255 * encodeSrgb(r), 255 * encodeSrgb(g), 255 * encodeSrgb(b)];
}

/** How the screen shows an XYZ (D50, Y = 1, absolute: the perfect diffuser is #ffffff). */
export function screenOfXyz(xyz: Readonly<Xyz>): ScreenColour {
  const values = screenValuesOf(xyz);
  const bytes = values.map((value) => Math.min(255, Math.max(0, Math.round(value))));
  return {
    hex: `#${bytes.map(hexByte).join('')}`,
    onScreen: values.every((value) => value >= -0.5 && value <= 255.5),
  };
}

/** How the screen shows a Lab (D50, absolute: 100, 0, 0 is #ffffff). */
export const screenOf = (lab: Readonly<Lab>): ScreenColour => screenOfXyz(xyzOfLab(lab));
