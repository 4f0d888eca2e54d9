import { describe, expect, it } from 'vitest';
import { beatPeriodMm, fadeBands, levelsOfCell } from '../../src/press/screens.ts';

describe('two screens beat', () => {
  // source: 2 L sin(d/2) per inch; periods in cells for 60 lpi, computed from the formula
  it.each([
    [30, 1.932],
    [15, 3.831],
    [5, 11.463],
  ])('at 60 lpi, %d degrees apart, once in %d cells', (degrees, cells) => {
    const period = beatPeriodMm({ lpi: 60, angleDeg: 45 }, { lpi: 60, angleDeg: 45 + degrees });
    expect(period / (25.4 / 60)).toBeCloseTo(cells, 2);
  });

  it('at 45 lpi every 6.5 mm 5 degrees apart, every 1.1 mm 30 degrees apart (case 12)', () => {
    const beside = (angleDeg: number) => beatPeriodMm({ lpi: 45, angleDeg: 15 }, { lpi: 45, angleDeg });
    expect(beside(20)).toBeCloseTo(6.5, 1);
    expect(beside(45)).toBeCloseTo(1.1, 1);
  });

  it('every 5.1 mm for 45 and 50 lpi at one angle (case 12)', () => {
    expect(beatPeriodMm({ lpi: 45, angleDeg: 45 }, { lpi: 50, angleDeg: 45 })).toBeCloseTo(5.1, 1);
  });

  it('never where they are alike, a quarter turn apart or not', () => {
    expect(beatPeriodMm({ lpi: 45, angleDeg: 0 }, { lpi: 45, angleDeg: 90 })).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('levels of a cell', () => {
  // source: grey levels = (ppi / lpi)^2 + 1, common formula of the trade
  it.each([
    [150, 2400, 257],
    [100, 1200, 145],
    [75, 600, 65],
    [50, 600, 145],
    [45, 300, 45.44],
  ])('%d lpi on %d dpi: %d', (lpi, dpi, levels) => {
    expect(levelsOfCell(lpi, dpi)).toBeCloseTo(levels, 2);
  });

  it('give a fade from 20 to 40 % over 100 mm at 85 lpi on 600 dpi 10 bands of 10 mm (case 13)', () => {
    const fade = { fromPercent: 20, toPercent: 40, lengthMm: 100 };
    expect(fadeBands(fade, { lpi: 85, dpi: 600 })).toEqual({ levels: 50, steps: 10, stepMm: 10 });
  });
});
