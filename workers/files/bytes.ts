/** A view on `bytes` alone, on shared memory or not. */
export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** All parts, one behind the other. */
export function joinBytes(parts: Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** One byte for each character, which must lie in Latin-1. */
export function latinBytes(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(text, (char) => char.charCodeAt(0));
}

/** One character for each byte. */
export function latinText(bytes: Uint8Array): string {
  return String.fromCharCode(...bytes);
}

/** A whole number in four bytes, the highest first. */
export function bigEndian(value: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(4);
  viewOf(bytes).setUint32(0, value);
  return bytes;
}
