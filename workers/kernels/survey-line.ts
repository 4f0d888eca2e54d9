import { type Channel, strengthOf } from './coverage.ts';

export interface SurveyArgs {
  pixels: Uint8Array;
  bands: 1 | 2 | 3 | 4;
}

export interface Survey {
  channel: Channel;
  /** The raw value that counts as full line, 1..255. */
  full: number;
}

/** A pixel below this strength counts as paper. */
const MARKED = 48;
/** A marked pixel with less difference between its channels counts as grey. */
const COLOURED = 40;
/** Hue is counted in 24 slots of 15 degrees; one hue spans four of them. */
const SLOTS = 24;
const ONE_HUE = 4;

/**
 * Chooses how line is read from a picture: a drawing all of one hue by the strength of its colour, so that a
 * yellow line counts in full; any other by darkness.
 */
export function surveyLine(args: SurveyArgs): Survey {
  const { pixels, bands } = args;
  const strengths = { darkness: new Uint32Array(256), colour: new Uint32Array(256) };
  const darkness = strengthOf('darkness', bands);
  const colour = strengthOf('colour', bands);
  const hues = new Uint32Array(SLOTS);
  let marked = 0;
  let coloured = 0;
  for (let p = 0; p < pixels.length; p += bands) {
    if (bands === 4 && (pixels[p + 3] === 0 || (pixels[p]! & pixels[p + 1]! & pixels[p + 2]!) === 255))
      continue;
    const alpha = bands === 2 ? pixels[p + 1]! : bands === 4 ? pixels[p + 3]! : 255;
    const strength = ((colour(pixels, p) * alpha + 127) / 255) | 0;
    strengths.colour[strength]!++;
    strengths.darkness[((darkness(pixels, p) * alpha + 127) / 255) | 0]!++;
    if (strength < MARKED) continue;
    marked++;
    if (bands < 3) continue;
    const slot = hueSlot(pixels[p]!, pixels[p + 1]!, pixels[p + 2]!);
    if (slot < 0) continue;
    coloured++;
    hues[slot]!++;
  }
  const oneHue = coloured > 0.9 * marked && densestWindow(hues) > 0.98 * coloured;
  const channel = oneHue ? 'colour' : 'darkness';
  const full = oneHue ? highLevel(strengths.colour, Math.max(8, marked * 0.02)) : 255;
  return { channel, full: Math.max(full, MARKED) };
}

/** Slot of a pixel's hue, or -1 where it is too grey to have one. */
function hueSlot(r: number, g: number, b: number): number {
  const most = Math.max(r, g, b);
  const chroma = most - Math.min(r, g, b);
  if (chroma < COLOURED) return -1;
  const sextant = most === r ? (g - b) / chroma : most === g ? 2 + (b - r) / chroma : 4 + (r - g) / chroma;
  return Math.floor((((sextant + 6) % 6) * SLOTS) / 6);
}

function densestWindow(hues: Uint32Array): number {
  let best = 0;
  for (let start = 0; start < SLOTS; start++) {
    let sum = 0;
    for (let k = 0; k < ONE_HUE; k++) sum += hues[(start + k) % SLOTS]!;
    best = Math.max(best, sum);
  }
  return best;
}

/** The level that at least `pixels` pixels reach. */
function highLevel(counts: Uint32Array, pixels: number): number {
  let sum = 0;
  for (let level = 255; level > 0; level--) {
    sum += counts[level]!;
    if (sum >= pixels) return level;
  }
  return 0;
}
