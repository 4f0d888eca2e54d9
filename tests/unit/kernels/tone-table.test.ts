import { describe, expect, it } from 'vitest';
import { softThreshold, toneTable } from '../../../workers/kernels/tone-table.ts';
import { flatPlane, planeOf, rowsOf } from '../support/pictures.ts';

describe('a tone table', () => {
  it('sends every value to another', () => {
    const from = planeOf([
      [0, 1, 2],
      [255, 2, 1],
    ]);
    const to = flatPlane(3, 2, 9);
    toneTable({ from, to, table: Uint8Array.from({ length: 256 }, (_, v) => 255 - v) }, 0, 2);
    expect(rowsOf(to.data, 3)).toEqual([
      [255, 254, 253],
      [0, 253, 254],
    ]);
  });

  it('leaves rows outside its range alone', () => {
    const to = flatPlane(2, 3, 9);
    toneTable({ from: flatPlane(2, 3, 5), to, table: new Uint8Array(256).fill(7) }, 1, 2);
    expect(rowsOf(to.data, 2)).toEqual([
      [9, 9],
      [7, 7],
      [9, 9],
    ]);
  });
});

describe('the soft threshold', () => {
  it.each([0, 1, 60, 127, 128, 200, 254])(
    'at %d makes line of what lies above it, and of nothing else',
    (level) => {
      for (const softness of [0, 0.1, 0.5, 1]) {
        const table = softThreshold(level, softness);
        for (let v = 0; v < 256; v++) expect(table[v]! >= 128).toBe(v > level);
      }
    },
  );

  it('without softness knows paper and line only', () => {
    const table = softThreshold(100, 0);
    expect(new Set(table)).toEqual(new Set([0, 255]));
    expect([table[100], table[101]]).toEqual([0, 255]);
  });

  it('at half and fully soft leaves every value as it was', () => {
    expect([...softThreshold(127, 1)]).toEqual(Array.from({ length: 256 }, (_, v) => v));
  });

  it('never falls', () => {
    for (const level of [0, 30, 127, 254])
      for (const softness of [0, 0.3, 1]) {
        const table = softThreshold(level, softness);
        for (let v = 1; v < 256; v++) expect(table[v]!).toBeGreaterThanOrEqual(table[v - 1]!);
      }
  });

  it('gets harder as softness falls', () => {
    const soft = (softness: number) => softThreshold(127, softness).filter((v) => v > 0 && v < 255).length;
    expect(soft(1)).toBe(254);
    expect(soft(0.5)).toBe(127);
    expect(soft(0)).toBe(0);
  });
});
