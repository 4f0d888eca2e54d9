import type { Plane } from './plane.ts';

/** Which property of a pixel says how much line it holds. */
export type Channel = 'darkness' | 'colour' | 'transparency';

export interface CoverageArgs {
  /** Interleaved 8-bit pixels: grey, grey + alpha, RGB or RGBA. */
  pixels: Uint8Array;
  bands: 1 | 2 | 3 | 4;
  channel: Channel;
  /** 256 bytes: what a raw value counts as. */
  table: Uint8Array;
  line: Plane;
}

/** Line coverage of decoded pixels, for rows `from..to`: alpha times darkness, or as the channel says. */
export function coverage(args: CoverageArgs, from: number, to: number): void {
  const { pixels, bands, channel, table } = args;
  const { width, data } = args.line;
  const strength = strengthOf(channel, bands);
  for (let i = from * width, p = i * bands; i < to * width; i++, p += bands) {
    const alpha = bands === 2 ? pixels[p + 1]! : bands === 4 ? pixels[p + 3]! : 255;
    const raw = alpha === 0 ? 0 : strength(pixels, p);
    data[i] = table[alpha === 255 ? raw : ((raw * alpha + 127) / 255) | 0]!;
  }
}

/** How much ink a pixel shows before its alpha, 0..255. */
export function strengthOf(channel: Channel, bands: number): (pixels: Uint8Array, at: number) => number {
  if (channel === 'transparency') return () => 255;
  if (bands < 3) return (pixels, at) => 255 - pixels[at]!;
  if (channel === 'colour')
    return (pixels, at) => 255 - Math.min(pixels[at]!, pixels[at + 1]!, pixels[at + 2]!);
  return (pixels, at) => 255 - ((54 * pixels[at]! + 183 * pixels[at + 1]! + 19 * pixels[at + 2]! + 128) >> 8);
}
