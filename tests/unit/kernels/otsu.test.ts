import { describe, expect, it } from 'vitest';
import { histogram } from '../../../workers/kernels/histogram.ts';
import { mean } from '../../../workers/kernels/mean.ts';
import { otsu, partingAt } from '../../../workers/kernels/otsu.ts';

const counts = (values: Record<number, number>) => {
  const list = new Uint32Array(256);
  for (const [value, count] of Object.entries(values)) list[Number(value)] = count;
  return list;
};

describe("Otsu's level", () => {
  it('parts two heaps, the first of equal levels: the top of the lower heap', () => {
    expect(otsu(counts({ 10: 100, 200: 100 }))).toBe(10);
    expect(otsu(counts({ 0: 1, 255: 1 }))).toBe(0);
  });

  it('keeps heaps whole whatever their sizes', () => {
    expect(otsu(counts({ 20: 9000, 30: 9000, 180: 100, 220: 100 }))).toBe(30);
  });

  it('is 0 for no pixels and for pixels of one value', () => {
    expect(otsu(counts({}))).toBe(0);
    expect(otsu(counts({ 80: 50 }))).toBe(0);
    expect(otsu(counts({ 255: 50 }))).toBe(0);
  });

  it('does not depend on how many pixels stand for each count', () => {
    const some = { 12: 30, 40: 80, 90: 10, 160: 40, 230: 25 };
    const more = Object.fromEntries(Object.entries(some).map(([value, count]) => [value, count * 1000]));
    expect(otsu(counts(more))).toBe(otsu(counts(some)));
  });
});

describe('a parting', () => {
  it('has the means of both classes, and is clear as far as they explain the spread', () => {
    expect(partingAt(counts({ 10: 100, 200: 100 }), 100)).toEqual({ below: 10, above: 200, clarity: 1 });
    expect(partingAt(counts({ 0: 1, 20: 1, 80: 1, 100: 1 }), 50)).toEqual({
      below: 10,
      above: 90,
      clarity: 1600 / 1700,
    });
  });

  it('with nothing on one side explains nothing', () => {
    expect(partingAt(counts({ 40: 9 }), 60)).toEqual({ below: 40, above: 60, clarity: 0 });
  });
});

describe('the histogram', () => {
  it('counts every value', () => {
    const found = histogram({ data: Uint8Array.of(0, 5, 5, 255, 0, 5) });
    expect(found).toHaveLength(256);
    expect(found).toEqual(counts({ 0: 2, 5: 3, 255: 1 }));
  });

  it('of nothing counts nothing', () => {
    expect(histogram({ data: new Uint8Array() })).toEqual(new Uint32Array(256));
  });
});

describe('the mean', () => {
  it('is the sum over the number of pixels', () => {
    expect(mean({ data: Uint8Array.of(0, 255, 10, 15) })).toBe(70);
  });

  it('of nothing is 0', () => {
    expect(mean({ data: new Uint8Array() })).toBe(0);
  });

  it('is exact for a large solid', () => {
    expect(mean({ data: new Uint8Array(20_000_000).fill(255) })).toBe(255);
  });
});
