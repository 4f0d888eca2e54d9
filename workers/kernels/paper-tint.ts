import { darkness } from './coverage.ts';

/** About so many pixels are looked at. */
const SAMPLE = 1_000_000;
/** Lightness counts as one sheet within so many levels to each side. */
const NEAR = 6;
/** Paper is no darker than this, and its weakest colour no less than this part of 255 of its strongest. */
const DARKEST = 96;
const WEAKEST = 100;
/** A tint that takes less away from white is none. */
const WHITE = 247;
/** The lightest sheet that is at least this part of the most frequent one is the paper; the other is a wash. */
const ENOUGH = 0.25;
/** A picture of which so much is transparent has no paper of its own. */
const CLEAR = 0.2;

/**
 * The tint of the sheet that lines are drawn on, from RGB or RGBA pixels: the lightest colour that much of the
 * picture has.
 *
 * @returns red, green and blue, the strongest of them 255; white for a sheet without a tint worth the name
 */
export function paperTint(pixels: Uint8Array, bands: 3 | 4): [number, number, number] {
  const step = Math.max(1, Math.floor(pixels.length / bands / SAMPLE)) * bands;
  const counts = new Uint32Array(256);
  const sums = new Float64Array(256 * 3);
  let seen = 0;
  let clear = 0;
  for (let p = 0; p < pixels.length; p += step) {
    seen++;
    if (bands === 4 && pixels[p + 3]! < 128) {
      clear++;
      continue;
    }
    const [r, g, b] = [pixels[p]!, pixels[p + 1]!, pixels[p + 2]!];
    const light = 255 - darkness(255 - r, 255 - g, 255 - b);
    counts[light]!++;
    sums[3 * light]! += r;
    sums[3 * light + 1]! += g;
    sums[3 * light + 2]! += b;
  }
  const light = paperLightness(counts);
  if (light === null || clear > CLEAR * seen) return [255, 255, 255];
  const mean = [0, 1, 2].map((channel) => around(light, (v) => sums[3 * v + channel]!));
  const most = Math.max(...mean);
  const tint = mean.map((value) => Math.round((255 * value) / most)) as [number, number, number];
  const weakest = Math.min(...tint);
  return weakest < WEAKEST || weakest >= WHITE ? [255, 255, 255] : tint;
}

function paperLightness(counts: Uint32Array): number | null {
  const heaps = Array.from({ length: 256 }, (_, light) =>
    light < DARKEST ? 0 : around(light, (v) => counts[v]!),
  );
  const most = Math.max(...heaps);
  if (most === 0) return null;
  let light = 255;
  while (heaps[light]! < ENOUGH * most) light--;
  while (light > DARKEST && heaps[light - 1]! > heaps[light]!) light--;
  return light;
}

/** Sum over the lightnesses near one. */
function around(light: number, of: (value: number) => number): number {
  let sum = 0;
  for (let v = Math.max(0, light - NEAR); v <= Math.min(255, light + NEAR); v++) sum += of(v);
  return sum;
}
