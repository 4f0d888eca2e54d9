import { converter, formatCss, modeP3, modeRgb, modeXyz50, useMode as registerMode } from 'culori/fn';
import type { Lab } from '../graph/inks.ts';
import { xyzOfLab } from './lab.ts';
import { screenOf } from './screen.ts';

registerMode(modeRgb);
registerMode(modeXyz50);
registerMode(modeP3);
const toP3 = converter('p3');

/** What a display can show: plain sRGB, or the wider Display P3. */
export type Gamut = 'srgb' | 'p3';

export interface DisplayColour {
  /** The nearest sRGB, #rrggbb. */
  hex: string;
  /** What CSS is to paint: `hex`, or a Display P3 colour where sRGB falls short and the display does not. */
  css: string;
  /** False when this display cannot show it: flag it beside the swatch. */
  onScreen: boolean;
}

/** Half a step of 8 bits. */
const SLACK = 0.5 / 255;

/** How a display shows a Lab (D50, absolute: 100, 0, 0 is its white). */
export function displayOf(lab: Readonly<Lab>, gamut: Gamut): DisplayColour {
  const { hex, onScreen } = screenOf(lab);
  if (onScreen || gamut === 'srgb') return { hex, css: hex, onScreen };
  const [x, y, z] = xyzOfLab(lab);
  const { r, g, b } = toP3({ mode: 'xyz50', x, y, z });
  const held = (value: number) => Math.min(1, Math.max(0, value));
  return {
    hex,
    css: formatCss({ mode: 'p3', r: held(r), g: held(g), b: held(b) }),
    onScreen: [r, g, b].every((value) => value >= -SLACK && value <= 1 + SLACK),
  };
}
