import { ascii, concat, le16, le32 } from './bytes.ts';

/** One RIFF chunk. */
export function riffChunk(type: string, data: ArrayLike<number>): Uint8Array {
  return concat(ascii(type), le32(data.length), data, data.length & 1 ? [0] : []);
}

/** A WebP file of the given chunks. */
export function webp(...chunks: Uint8Array[]): Uint8Array {
  const body = concat(ascii('WEBP'), ...chunks);
  return concat(ascii('RIFF'), le32(body.length), body);
}

/** VP8X with its flags: 2 animated, 8 EXIF, 16 alpha. */
export function canvas(flags: number, width: number, height: number): Uint8Array {
  const less = (value: number) => [...le16(value & 0xffff), value >>> 16];
  return riffChunk('VP8X', [flags, 0, 0, 0, ...less(width - 1), ...less(height - 1)]);
}

/**
 * VP8L data (RFC 9649) whose pixels are `(red, green, blue, alpha)` with one of two greens each; `second`
 * says which pixels take the second.
 */
export function losslessData(
  width: number,
  height: number,
  greens: [number, number],
  others: { red: number; blue: number; alpha: number },
  second: boolean[],
): Uint8Array {
  const bits: number[] = [];
  const put = (value: number, count: number) => {
    for (let i = 0; i < count; i++) bits.push((value >>> i) & 1);
  };
  const oneSymbol = (symbol: number) => {
    put(1, 1);
    put(0, 1);
    put(1, 1);
    put(symbol, 8);
  };
  put(width - 1, 14);
  put(height - 1, 14);
  put(others.alpha < 255 ? 1 : 0, 1);
  put(0, 3 + 1 + 1 + 1);
  put(1, 1);
  put(1, 1);
  put(1, 1);
  put(greens[0], 8);
  put(greens[1], 8);
  oneSymbol(others.red);
  oneSymbol(others.blue);
  oneSymbol(others.alpha);
  oneSymbol(0);
  for (const is of second) put(is ? 1 : 0, 1);
  const bytes = Array.from({ length: Math.ceil(bits.length / 8) }, (_, i) =>
    bits.slice(i * 8, i * 8 + 8).reduce((sum, bit, at) => sum | (bit << at), 0),
  );
  return concat([0x2f], bytes);
}
