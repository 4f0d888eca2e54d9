import { describe, expect, it } from 'vitest';
import { grain } from '../../../workers/kernels/grain.ts';
import { levelShares, mottleField } from '../../../workers/kernels/grain-field.ts';
import { mottleTable } from '../../../workers/kernels/grain-table.ts';
import { latticeOf } from '../../../workers/kernels/lattice.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { flatPlane, isFlat, percentOf } from '../support/pictures.ts';

/** 76 mm square at 200 ppi: some 16,000 blotches. */
const SIDE = 600;
const PIXEL_MM = 25.4 / 200;
const LATTICE = latticeOf(1);

interface Options {
  strength?: number;
  hardness?: number;
  openSolids?: number;
  seed?: number;
  sizeMm?: number;
}

function grained(value: number, options: Options = {}): Plane {
  const plate = flatPlane(SIDE, SIDE, value);
  const out = flatPlane(SIDE, SIDE, 9);
  const { sizeMm = 0.6, strength = 0.35, hardness = 0.3, openSolids = 0, seed = 1 } = options;
  const field = mottleField(LATTICE, sizeMm, hardness, seed, PIXEL_MM);
  const shares = levelShares(field, [SIDE * PIXEL_MM, SIDE * PIXEL_MM]);
  const table = mottleTable(shares, strength, openSolids);
  grain({ plate, out, field, pixelMm: PIXEL_MM, table }, 0, SIDE);
  return out;
}

const solidOf = (percent: number) => Math.round(percent * 2.55);
const TINTS = [5, 10, 25, 50, 75, 90, 95];
const spreadOf = ({ data }: Plane) =>
  data.reduce((most, v) => Math.max(most, v), 0) - data.reduce((least, v) => Math.min(least, v), 255);

describe('grain', () => {
  it.each(TINTS)('keeps the mean of a tint of %d percent within half a point', (percent) => {
    const value = solidOf(percent);
    for (const options of [
      {},
      { strength: 1 },
      { strength: 1, hardness: 1 },
      { seed: 0xfeedf00d },
      { hardness: 0 },
    ]) {
      const off = percentOf(grained(value, options).data) - (value * 100) / 255;
      expect(Math.abs(off)).toBeLessThan(0.5);
    }
  });

  it('keeps the mean of every tint below the shoulder also where it opens solids', () => {
    for (const percent of [10, 50, 90]) {
      const value = solidOf(percent);
      const off = percentOf(grained(value, { openSolids: 0.15 }).data) - (value * 100) / 255;
      expect(Math.abs(off)).toBeLessThan(0.5);
    }
  });

  it('leaves paper paper and solid solid', () => {
    for (const options of [{}, { strength: 1, hardness: 1 }]) {
      expect(isFlat(grained(0, options), 0)).toBe(true);
      expect(isFlat(grained(255, options), 255)).toBe(true);
    }
  });

  it.each([5, 10, 15])('opens a solid by %d points on average', (percent) => {
    const mean = percentOf(grained(255, { openSolids: percent / 100, strength: 1 }).data);
    expect(Math.abs(mean - (100 - percent))).toBeLessThan(0.5);
    expect(isFlat(grained(0, { openSolids: percent / 100, strength: 1 }), 0)).toBe(true);
  });

  it('wanders as far as its strength allows, to both sides', () => {
    const values = grained(100, { strength: 0.5, hardness: 1 }).data;
    expect([Math.min(...new Set(values)), Math.max(...new Set(values))]).toEqual([50, 150]);
    expect(spreadOf(grained(100, { strength: 0 }))).toBe(0);
  });

  it('tears as it gets harder: more pixels at the ends of its range', () => {
    const atEnds = (hardness: number) =>
      grained(100, { strength: 0.5, hardness }).data.filter((v) => v === 50 || v === 150).length;
    expect(atEnds(0)).toBeLessThan(atEnds(0.5));
    expect(atEnds(0.5)).toBeLessThan(atEnds(1));
    expect(atEnds(1)).toBeGreaterThan(0.7 * SIDE * SIDE);
  });

  it('is the same for the same seed, and without likeness for another', () => {
    const [one, again, other] = [grained(128), grained(128), grained(128, { seed: 2 })];
    expect(again.data.every((value, i) => value === one.data[i])).toBe(true);
    let product = 0;
    let square = 0;
    one.data.forEach((value, i) => {
      product += (value - 128) * (other.data[i]! - 128);
      square += (value - 128) ** 2;
    });
    // 4 standard deviations of the correlation of 16,000 independent blotches
    expect(Math.abs(product / square)).toBeLessThan(4 / Math.sqrt(16_000));
  });

  it('follows the size it is given: larger blotches change less from pixel to pixel', () => {
    const restless = (sizeMm: number) => {
      const { data } = grained(128, { sizeMm });
      let sum = 0;
      for (let i = 1; i < data.length; i++) sum += Math.abs(data[i]! - data[i - 1]!);
      return sum;
    };
    expect(restless(4)).toBeLessThan(restless(2));
    expect(restless(2)).toBeLessThan(restless(1));
  });
});
