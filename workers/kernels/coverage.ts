import { hueSlot, SLOTS } from './hue.ts';
import type { Plane } from './plane.ts';

/** Which property of a pixel says how much line it holds. */
export type Channel = 'darkness' | 'colour' | 'transparency';

/** How line is read from a picture. */
export interface Reading {
  channel: Channel;
  /** Red, green and blue of the sheet, the strongest of them 255: its tint is divided out, its lightness is not. */
  paper: readonly [number, number, number];
  /** For each slot of hue the colourfulness that counts as full line; 0 where a colour counts by its darkness alone. */
  full: Uint8Array;
}

/** A white sheet, every colour by its darkness. */
export const PLAIN: Reading = { channel: 'darkness', paper: [255, 255, 255], full: new Uint8Array(SLOTS) };

export interface CoverageArgs {
  /** Interleaved 8-bit pixels: grey, grey + alpha, RGB or RGBA. */
  pixels: Uint8Array;
  bands: 1 | 2 | 3 | 4;
  reading: Reading;
  line: Plane;
}

/** Line coverage of decoded pixels, for rows `from..to`: alpha times darkness, or as the channel says. */
export function coverage(args: CoverageArgs, from: number, to: number): void {
  const { pixels, bands, reading } = args;
  const { width, data } = args.line;
  const strength = strengthOf(reading, bands);
  for (let i = from * width, p = i * bands; i < to * width; i++, p += bands) {
    const alpha = bands === 2 ? pixels[p + 1]! : bands === 4 ? pixels[p + 3]! : 255;
    const raw = alpha === 0 ? 0 : strength(pixels, p);
    data[i] = alpha === 255 ? raw : ((raw * alpha + 127) / 255) | 0;
  }
}

/** How much line a pixel shows before its alpha, 0..255. */
function strengthOf(reading: Reading, bands: number): (pixels: Uint8Array, at: number) => number {
  const { channel, paper, full } = reading;
  if (channel === 'transparency') return () => 255;
  if (bands < 3) return (pixels, at) => 255 - pixels[at]!;
  const [red, green, blue] = paper.map(shortOf) as [Uint8Array, Uint8Array, Uint8Array];
  if (channel === 'darkness')
    return (pixels, at) => darkness(red[pixels[at]!]!, green[pixels[at + 1]!]!, blue[pixels[at + 2]!]!);
  return (pixels, at) => {
    const [r, g, b] = [red[pixels[at]!]!, green[pixels[at + 1]!]!, blue[pixels[at + 2]!]!];
    const dark = darkness(r, g, b);
    const colour = Math.max(r, g, b) - Math.min(r, g, b);
    const whole = colour === 0 ? 0 : full[hueSlot(255 - r, 255 - g, 255 - b)]!;
    if (whole === 0 || colour * 255 <= dark * whole) return dark;
    return colour >= whole ? 255 : ((colour * 255) / whole + 0.5) | 0;
  };
}

/** Table of how far a value falls short of the paper's, in parts of 255; 0 for what is lighter. */
export function shortOf(paper: number): Uint8Array {
  return Uint8Array.from({ length: 256 }, (_, value) => Math.max(0, Math.round(255 - (255 * value) / paper)));
}

/** Darkness to the eye from how far red, green and blue fall short of the paper. */
export function darkness(red: number, green: number, blue: number): number {
  return (54 * red + 183 * green + 19 * blue + 127) >> 8;
}
