import { describe, expect, it } from 'vitest';
import { plateGrain } from '../../../src/nodes/plate-grain.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { reduceCoverage } from '../../../workers/kernels/reduce.ts';
import { grained } from '../support/grained.ts';
import { likeness } from '../support/likeness.ts';
import { drawnPlane, flatPlane, percentOf } from '../support/pictures.ts';
import { peakPeriodPx } from '../support/spectrum.ts';

const TILED = ['cloud', 'speckle', 'fibre', 'stipple'] as const;
const ALL = ['mottle', ...TILED] as const;

describe.each(ALL)('a grain of pattern %s', (pattern) => {
  it('keeps the mean of every tint within half a point, whatever its size, strength and hardness', async () => {
    for (const sizeMm of [0.1, 0.35, 2, 20])
      for (const [strengthPercent, hardness] of [
        [35, 15],
        [100, 0],
        [100, 100],
      ])
        for (const percent of [5, 25, 50, 75, 95]) {
          const value = Math.round(percent * 2.55);
          const settings = { pattern, sizeMm, strengthPercent, hardness };
          const [out] = await grained([flatPlane(400, 520, value)], 100, settings);
          expect(Math.abs(percentOf(out!.data) - value / 2.55)).toBeLessThan(0.5);
        }
  });

  it('keeps the mean of every tint from 5 to 95 % within half a point', async () => {
    const tints = Array.from({ length: 19 }, (_, k) => 5 * (k + 1));
    for (const percent of tints) {
      const value = Math.round(percent * 2.55);
      const settings = { pattern, sizeMm: 0.5, strengthPercent: 80, hardness: 60 };
      const [out] = await grained([flatPlane(500, 500, value)], 150, settings);
      expect(Math.abs(percentOf(out!.data) - value / 2.55), `${percent} %`).toBeLessThan(0.5);
    }
  });

  it('opens a solid by what it is told, and leaves paper and solids alone else', async () => {
    const solid = flatPlane(400, 400, 255);
    for (const openSolidsPercent of [0, 5, 15]) {
      const [out] = await grained([solid], 150, { pattern, strengthPercent: 100, openSolidsPercent });
      expect(Math.abs(percentOf(out!.data) - (100 - openSolidsPercent))).toBeLessThan(0.5);
      const [paper] = await grained([flatPlane(50, 50)], 150, { pattern, openSolidsPercent });
      expect(percentOf(paper!.data)).toBe(0);
    }
  });

  it('has nothing in common from plate to plate, nor from seed to seed', async () => {
    const flat = flatPlane(1200, 1200, 128);
    const plates = await grained([flat, flat, flat, flat], 300, { pattern });
    const [other] = await grained([flat], 300, { pattern, seed: 2 });
    for (const [k, plate] of plates.entries()) {
      for (const later of plates.slice(k + 1)) expect(Math.abs(likeness(plate, later))).toBeLessThan(0.02);
      expect(Math.abs(likeness(plate, other!))).toBeLessThan(0.02);
    }
  });

  it('at a quarter of the scale is near the mean of the full picture', async () => {
    const settings = { pattern, sizeMm: 1.4, strengthPercent: 60, hardness: 40 };
    const [full] = await grained([flatPlane(1200, 1200, 128)], 300, settings);
    const [small] = await grained([flatPlane(300, 300, 128)], 75, settings);
    const reduced = flatPlane(300, 300);
    reduceCoverage({ from: full!, to: reduced, scale: 4 }, 0, 300);
    let off = 0;
    small!.data.forEach((value, i) => {
      off += Math.abs(value - reduced.data[i]!);
    });
    expect(likeness(small!, reduced)).toBeGreaterThan(0.93);
    expect(off / 90_000).toBeLessThan(pattern === 'mottle' ? 16 : 11);
  });

  it('gets stronger towards the edge of ink, and keeps the mean there', async () => {
    const bar = drawnPlane(900, 900, (x) => (x >= 300 && x < 600 ? 128 : 0));
    const [out] = await grained([bar], 150, { pattern, strengthPercent: 10, edgePercent: 90, edgeMm: 6 });
    const wander = (from: number) => {
      let sum = 0;
      for (let y = 0; y < 900; y++)
        for (let x = from; x < from + 20; x++) sum += Math.abs(out!.data[y * 900 + x]! - 128);
      return sum / 18_000;
    };
    expect(wander(300)).toBeGreaterThan(3 * wander(440));
    expect(wander(580)).toBeGreaterThan(3 * wander(440));
    expect(Math.abs(percentOf(out!.data) - percentOf(bar.data))).toBeLessThan(0.5);
  });
});

describe.each(TILED)('the power spectrum of pattern %s', (pattern) => {
  it.each([
    [0.6, 15, 50],
    [1, 100, 25],
    [1, 50, 75],
  ])('peaks at its size: %d mm, hardness %d, tint %d', async (sizeMm, hardness, percent) => {
    const flat = flatPlane(1024, 1024, Math.round(percent * 2.55));
    const [out] = await grained([flat], 600, { pattern, sizeMm, hardness, strengthPercent: 100 });
    const periodMm = (peakPeriodPx(out!) * 25.4) / 600;
    expect(Math.abs(periodMm / sizeMm - 1)).toBeLessThan(0.1);
  });
});

describe.each(TILED)('the tile of pattern %s', (pattern) => {
  it('does not show where it repeats', async () => {
    const sizeMm = 0.3;
    const [out] = await grained([flatPlane(1500, 1500, 128)], 300, { pattern, sizeMm });
    for (let away = 150; away <= 750; away += 3)
      for (const [dx, dy] of [
        [away, 0],
        [0, away],
        [Math.round(away * 0.8), Math.round(away * 0.6)],
      ])
        expect(Math.abs(likeness(part(out!, 0, 0), part(out!, dx!, dy!)))).toBeLessThan(0.12);
  });
});

/** 240 px square of a plane. */
function part(plane: Plane, left: number, top: number): Plane {
  return drawnPlane(240, 240, (x, y) => plane.data[(top + y) * plane.width + left + x]!);
}

describe('settings of Plate grain', () => {
  it('of version 1 still open, and mean a mottle', () => {
    const old = {
      sizeMm: 0.4,
      strengthPercent: 30,
      strengthPercentOf: { soot: 10 },
      hardness: 20,
      openSolidsPercent: 5,
      seed: 3,
    };
    expect(plateGrain.settings.parse(old)).toEqual({ ...old, pattern: 'mottle', edgePercent: 0, edgeMm: 2 });
  });

  it.each([0, -1, 1000])('refuse a size of %d mm', (sizeMm) => {
    expect(plateGrain.settings.safeParse({ sizeMm }).success).toBe(false);
  });
});
