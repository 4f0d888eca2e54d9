/** Big-endian unsigned 32-bit numbers. */
export function be32(...values: number[]): number[] {
  return values.flatMap((value) => [24, 16, 8, 0].map((shift) => (value >>> shift) & 255));
}

/** Big-endian unsigned 16-bit numbers. */
export function be16(...values: number[]): number[] {
  return values.flatMap((value) => [(value >>> 8) & 255, value & 255]);
}

/** Little-endian unsigned 32-bit numbers. */
export function le32(...values: number[]): number[] {
  return values.flatMap((value) => be32(value).reverse());
}

/** Little-endian unsigned 16-bit numbers. */
export function le16(...values: number[]): number[] {
  return values.flatMap((value) => be16(value).reverse());
}

/** The bytes of Latin text. */
export function ascii(text: string): number[] {
  return [...text].map((char) => char.charCodeAt(0));
}

/** UTF-8 bytes of text. */
export function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** Bits written one after the other, the first in the highest bit of a byte. */
export function bitsToBytes(bits: string): number[] {
  const padded = bits.padEnd(Math.ceil(bits.length / 8) * 8, '0');
  return (padded.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2));
}

/** All parts, one behind the other. */
export function concat(...parts: ArrayLike<number>[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
