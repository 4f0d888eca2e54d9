import { describe, expect, it } from 'vitest';
import { LATTICE, latticeOf, mix, octavesOf, textureRow } from '../../../workers/kernels/lattice.ts';

const SEEDS = [0, 1, 2, 77, 0xffffffff];

function texture(seed: number, width: number, height: number, pixelMm: number, sizeMm = 0.6): Float32Array[] {
  const lattice = latticeOf(seed);
  const octaves = octavesOf(sizeMm, 3, seed, pixelMm);
  return Array.from({ length: height }, (_, y) => {
    const row = new Float32Array(width);
    textureRow(lattice, octaves, y, pixelMm, row);
    return row;
  });
}

const meanOf = (rows: Float32Array[]) =>
  rows.reduce((sum, row) => sum + row.reduce((a, b) => a + b, 0), 0) / rows.length / rows[0]!.length;

describe('the lattice', () => {
  it.each(SEEDS)('of seed %d has a mean of exactly 0', (seed) => {
    expect(latticeOf(seed).reduce((sum, value) => sum + value, 0)).toBe(0);
  });

  it.each(SEEDS)('of seed %d holds each value as often as its opposite', (seed) => {
    const counts = new Map<number, number>();
    for (const value of latticeOf(seed)) counts.set(value, (counts.get(value) ?? 0) + 1);
    for (const [value, count] of counts) expect(counts.get(-value)).toBe(count);
    expect(counts.has(-128)).toBe(false);
  });

  it('is the same for the same seed and another for another', () => {
    expect(latticeOf(5)).toEqual(latticeOf(5));
    const other = latticeOf(6);
    const differing = latticeOf(5).filter((value, i) => value !== other[i]).length;
    expect(differing).toBeGreaterThan(0.9 * LATTICE * LATTICE);
  });

  it('is shuffled: neighbours have nothing in common', () => {
    const lattice = latticeOf(3);
    let product = 0;
    let square = 0;
    for (let i = 1; i < lattice.length; i++) {
      product += lattice[i]! * lattice[i - 1]!;
      square += lattice[i]! ** 2;
    }
    // 4 standard deviations of the correlation of 65,535 independent pairs
    expect(Math.abs(product / square)).toBeLessThan(4 / Math.sqrt(lattice.length));
  });
});

describe('mix', () => {
  it('gives 32 bits, each set for about half of all numbers', () => {
    const count = 20_000;
    const set = new Array<number>(32).fill(0);
    for (let i = 0; i < count; i++) {
      const bits = mix(i, 9);
      expect(bits >>> 0).toBe(bits);
      for (let k = 0; k < 32; k++) set[k]! += (bits >>> k) & 1;
    }
    // 5 standard deviations of a fair coin
    for (const times of set) expect(Math.abs(times / count - 0.5)).toBeLessThan(2.5 / Math.sqrt(count));
  });

  it('gives different numbers to different values, for one seed', () => {
    expect(new Set(Array.from({ length: 100_000 }, (_, i) => mix(i, 4))).size).toBe(100_000);
  });
});

describe('the layers of a texture', () => {
  it('halve in size and add up to 1 where pixels are fine enough', () => {
    const octaves = octavesOf(0.8, 3, 1, 0.001);
    expect(octaves.map(({ perMm }) => 1 / perMm)).toEqual([0.8, 0.4, 0.2]);
    expect(octaves.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it('run in directions of unit length', () => {
    for (const seed of SEEDS)
      for (const { cos, sin } of octavesOf(1, 3, seed, 0.01))
        expect(cos * cos + sin * sin).toBeCloseTo(1, 15);
  });

  it('fade out when pixels grow too coarse for them, the finest first', () => {
    const layers = (pixelMm: number) => octavesOf(0.8, 3, 1, pixelMm).length;
    expect([0.05, 0.2, 0.4, 0.8].map(layers)).toEqual([3, 2, 1, 0]);
  });
});

describe('a texture', () => {
  it('is the same for the same seed and another for another', () => {
    expect(texture(4, 50, 20, 0.05)).toEqual(texture(4, 50, 20, 0.05));
    expect(texture(4, 50, 20, 0.05)).not.toEqual(texture(5, 50, 20, 0.05));
  });

  it('stays within -1..1', () => {
    for (const seed of SEEDS)
      for (const row of texture(seed, 400, 50, 0.05))
        for (const value of row) expect(Math.abs(value)).toBeLessThanOrEqual(1);
  });

  it.each(SEEDS)('of seed %d has a mean near 0 over many blotches', (seed) => {
    // 200 x 200 blotches, each of them off by less than 1: 3 standard deviations of their mean
    expect(Math.abs(meanOf(texture(seed, 800, 800, 0.15)))).toBeLessThan(3 / 200);
  });

  it('does not jump: a tenth of a blotch changes it by little', () => {
    const [row] = texture(1, 2000, 1, 0.06, 6);
    const steps = row!.slice(1).map((value, i) => Math.abs(value - row![i]!));
    // slope of the fade at most 1.5 x 2 a cell, in layers of 6, 3 and 1.5 mm
    const steepest = [1, 0.6, 0.36].reduce(
      (sum, weight, k) => sum + ((weight * 0.4) / (1 - 0.6 ** 3)) * 2 ** k,
      0,
    );
    expect(Math.max(...steps)).toBeLessThan(3 * Math.SQRT2 * steepest * 0.01);
  });
});
