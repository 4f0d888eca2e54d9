import { describe, expect, it } from 'vitest';
import { shrinkPlate } from '../../../src/app/panels/shrink-plate.ts';

const plate = (width: number, ...coverage: number[]) => ({
  width,
  height: coverage.length / width,
  coverage: Uint8Array.from(coverage),
});

describe('a small plate', () => {
  it('holds the mean of what each pixel stands for', () => {
    expect(shrinkPlate(plate(4, 0, 255, 255, 255, 0, 255, 255, 255), 2, 9)).toEqual(plate(2, 128, 255));
  });

  it('keeps a last row and column that do not fill a square', () => {
    expect(shrinkPlate(plate(3, 10, 10, 200, 10, 10, 200, 90, 90, 50), 2, 2)).toEqual(
      plate(2, 10, 200, 90, 50),
    );
  });

  it('stays as it is when it fits', () => {
    const small = plate(2, 1, 2);
    expect(shrinkPlate(small, 2, 1)).toBe(small);
  });
});
