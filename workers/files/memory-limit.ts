import { joinBytes } from './bytes.ts';

const HEADER_BYTES = 8;
const MEMORY_SECTION = 5;

/**
 * The same WebAssembly module with an upper limit on the one memory it defines.
 * @param limitPages most pages of 64 KiB it may grow to
 * @throws Error for a module that defines no memory of its own
 */
export function withMemoryLimit(wasm: Uint8Array<ArrayBuffer>, limitPages: number): Uint8Array<ArrayBuffer> {
  let at = HEADER_BYTES;
  while (at < wasm.length) {
    const size = readUnsigned(wasm, at + 1);
    const end = size.next + size.value;
    if (wasm[at] === MEMORY_SECTION) {
      const least = readUnsigned(wasm, size.next + 2).value;
      const body = [1, 1, ...unsigned(least), ...unsigned(limitPages)];
      return joinBytes([
        wasm.subarray(0, at),
        Uint8Array.of(MEMORY_SECTION, ...unsigned(body.length), ...body),
        wasm.subarray(end),
      ]);
    }
    at = end;
  }
  throw new Error('this WebAssembly module defines no memory');
}

/** One unsigned LEB128 number. */
function readUnsigned(bytes: Uint8Array, at: number): { value: number; next: number } {
  let value = 0;
  let scale = 1;
  let next = at;
  for (;;) {
    const byte = bytes[next++]!;
    value += (byte & 0x7f) * scale;
    if (byte < 0x80) return { value, next };
    scale *= 128;
  }
}

function unsigned(value: number): number[] {
  const low = value & 0x7f;
  return value < 128 ? [low] : [low | 0x80, ...unsigned(value >>> 7)];
}
