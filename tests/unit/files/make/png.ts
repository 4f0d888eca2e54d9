import { zlibSync } from 'fflate';
import { PNG } from 'pngjs';
import { ascii, be32, concat } from './bytes.ts';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10];

/** Kinds of PNG by their number in the header. */
export const GREY = 0;
export const RGB = 2;
export const PALETTE = 3;
export const GREY_ALPHA = 4;

/** CRC-32, bit by bit. */
function sum(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit++) value = (value >>> 1) ^ (value & 1 ? 0xedb88320 : 0);
  }
  return ~value >>> 0;
}

/** One chunk; `crc` replaces its true check sum. */
export function chunk(type: string, data: ArrayLike<number>, crc?: number): Uint8Array {
  const body = concat(ascii(type), data);
  return concat(be32(data.length), body, be32(crc ?? sum(body)));
}

/** IHDR. */
export function header(
  width: number,
  height: number,
  depth: number,
  kind: number,
  interlace = 0,
): Uint8Array {
  return chunk('IHDR', [...be32(width, height), depth, kind, 0, 0, interlace]);
}

/** IDAT of raw scan lines, each led by its filter byte. */
export function pixels(lines: ArrayLike<number>): Uint8Array {
  return chunk('IDAT', zlibSync(Uint8Array.from(lines)));
}

/** A whole PNG of the given chunks and IEND. */
export function png(...chunks: Uint8Array[]): Uint8Array {
  return concat(SIGNATURE, ...chunks, chunk('IEND', []));
}

/** An 8-bit PNG written by pngjs: 1, 2, 3 or 4 bands. */
export function pngjsPng(width: number, height: number, bands: 1 | 2 | 3 | 4, data: number[]): Uint8Array {
  const colorType = ([0, 4, 2, 6] as const)[bands - 1]!;
  const picture = new PNG({ width, height });
  for (let i = 0; i < width * height; i++) {
    const at = data.slice(i * bands, (i + 1) * bands);
    const [r, g, b] = bands < 3 ? [at[0]!, at[0]!, at[0]!] : [at[0]!, at[1]!, at[2]!];
    const alpha = bands % 2 === 0 ? at[bands - 1]! : 255;
    picture.data.set([r, g, b, alpha], i * 4);
  }
  return new Uint8Array(PNG.sync.write(picture, { colorType, inputHasAlpha: true }));
}
