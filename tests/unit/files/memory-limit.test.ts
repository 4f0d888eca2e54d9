import { expect, test } from 'vitest';
import { withMemoryLimit } from '../../../workers/files/memory-limit.ts';

const HEADER = [0, 0x61, 0x73, 0x6d, 1, 0, 0, 0];
/** One memory of a single page without limit, exported as "m". */
const MODULE = Uint8Array.from([...HEADER, ...[5, 3, 1, 0, 1], ...[7, 5, 1, 1, 0x6d, 2, 0]]);

function memoryOf(wasm: Uint8Array<ArrayBuffer>): WebAssembly.Memory {
  return new WebAssembly.Instance(new WebAssembly.Module(wasm)).exports.m as WebAssembly.Memory;
}

test('lets memory grow to the limit and no further', () => {
  const memory = memoryOf(withMemoryLimit(MODULE, 300));
  memory.grow(299);
  expect(memory.buffer.byteLength).toBe(300 * 65_536);
  expect(() => memory.grow(1)).toThrow();
  expect(() => memoryOf(MODULE).grow(300)).not.toThrow();
});

test('leaves the module itself as it was', () => {
  const copy = MODULE.slice();
  withMemoryLimit(copy, 300);
  expect(copy).toEqual(MODULE);
});

test('refuses a module without memory', () => {
  expect(() => withMemoryLimit(Uint8Array.from(HEADER), 300)).toThrow(/no memory/);
});
