import { zlibSync } from 'fflate';
import { bitsToBytes, concat, le16, le32 } from './bytes.ts';

const SHORT = 3;
const LONG = 4;
const RATIONAL = 5;

/** Tag values by tag number; `[numerator, denominator]` pairs for the two resolutions. */
export type Tags = Record<number, number[]>;

/** One little-endian directory at `offset` with its long values behind it. */
export function directory(tags: Tags, offset: number, next: number): Uint8Array {
  const numbers = Object.keys(tags)
    .map(Number)
    .sort((a, b) => a - b);
  const entries: number[] = [];
  const outside: number[] = [];
  const outsideAt = offset + 2 + numbers.length * 12 + 4;
  for (const tag of numbers) {
    const values = tags[tag]!;
    const rational = tag === 282 || tag === 283;
    const type = rational ? RATIONAL : values.some((value) => value > 0xffff) ? LONG : SHORT;
    const data = type === SHORT ? le16(...values) : le32(...values);
    entries.push(...le16(tag, type), ...le32(rational ? 1 : values.length));
    if (data.length <= 4) entries.push(...data, ...Array(4 - data.length).fill(0));
    else {
      entries.push(...le32(outsideAt + outside.length));
      outside.push(...data);
    }
  }
  return concat(le16(numbers.length), entries, le32(next), outside);
}

/** A little-endian TIFF of one page and one strip; `tags` add to or replace those made here. */
export function tiff(
  width: number,
  height: number,
  strip: ArrayLike<number>,
  tags: Tags,
  next = 0,
): Uint8Array {
  const at = 8 + strip.length + (strip.length & 1);
  const made: Tags = { 256: [width], 257: [height], 273: [8], 278: [height], 279: [strip.length] };
  const body = concat(strip, strip.length & 1 ? [0] : []);
  return concat([0x49, 0x49, 42, 0], le32(at), body, directory({ ...made, ...tags }, at, next));
}

/** The same TIFF with one more page of `tags`, whose pixels are those of the first. */
export function withPage(file: Uint8Array, tags: Tags): Uint8Array {
  const padded = file.length & 1 ? concat(file, [0]) : file.slice();
  const view = new DataView(padded.buffer);
  const first = view.getUint32(4, true);
  view.setUint32(first + 2 + view.getUint16(first, true) * 12, padded.length, true);
  return concat(padded, directory(tags, padded.length, 0));
}

/** zlib stream for compression 8. */
export function deflate(bytes: number[]): Uint8Array {
  return zlibSync(Uint8Array.from(bytes));
}

/** A legal LZW stream that spends 9 bits on each byte, for compression 5 and under 250 bytes. */
export function plainLzw(bytes: number[]): number[] {
  return bitsToBytes([256, ...bytes, 257].map((code) => code.toString(2).padStart(9, '0')).join(''));
}

/** CCITT G4 of 8 x 8 with black in the 4 x 4 at the top left, for compression 4 (ITU-T T.6). */
export function blackCornerG4(): number[] {
  const horizontal = '001';
  const white0 = '00110101';
  const black4 = '011';
  const same = '1';
  const pass = '0001';
  const endOfLine = '000000000001';
  const first = horizontal + white0 + black4 + same;
  const repeated = same.repeat(3);
  return bitsToBytes(first + repeated.repeat(3) + pass + same + same.repeat(3) + endOfLine.repeat(2));
}
