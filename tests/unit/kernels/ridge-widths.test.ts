import { describe, expect, it } from 'vitest';
import { ridgeWidths } from '../../../workers/kernels/ridge-widths.ts';
import { planeOf } from '../support/pictures.ts';

/** Slots with their counts. */
const ridges = (rows: number[][]) =>
  [...ridgeWidths({ depth: planeOf(rows) }).entries()].filter(([, count]) => count > 0);

describe('the middle of a line', () => {
  it('of an odd width is one pixel across', () => {
    const row = [0, 10, 20, 10, 0, 0];
    expect(ridges([row, row, row, row, row])).toEqual([[40, 3]]);
  });

  it('of an even width is two', () => {
    const row = [0, 10, 20, 20, 10, 0];
    expect(ridges([row, row, row, row])).toEqual([[41, 4]]);
  });

  it('is not where the line is broader beside, nor farther than is measured, nor on paper', () => {
    const row = [0, 10, 255, 255, 10, 0];
    expect(ridges([row, row, row, row])).toEqual([]);
  });
});
