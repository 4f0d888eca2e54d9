import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlatesValue } from '../../../workers/engine/values.ts';
import { reduceCoverage } from '../../../workers/kernels/reduce.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withRecipes, withSettings } from '../support/jobs.ts';
import { likeness } from '../support/likeness.ts';
import { drawnPlane, flatPlane, percentOf } from '../support/pictures.ts';

const SIDE = 900;

let bench: Bench;
let asset: string;
beforeAll(() => {
  bench = new Bench();
  asset = bench.drawing(drawnPlane(SIDE, SIDE, (x, y) => (x === 0 && y < 40 ? 255 : 0)));
});
afterAll(() => bench.close());

/** Every plate 50 % all over, no line; 114 mm square at 200 ppi. */
function grained(settings: Settings, scale = 1): Promise<PlatesValue> {
  const job = withSettings(defaultJob({ asset, ppi: 200 }), {
    'key-line': { tintPercent: 0, fills: 'kept' },
    'plate-grain': settings,
  });
  const tinted = withRecipes(job, {}, { straw: 50, brick: 50, soot: 50 });
  return bench.value(tinted, 'plate-grain.plates', 'plates', scale);
}

const planesOf = (value: PlatesValue) => value.plates.map(({ coverage }) => coverage);

describe('plate grain', () => {
  it('keeps the mean of each plate within half a point', async () => {
    for (const { data } of planesOf(await grained({})))
      expect(Math.abs(percentOf(data) - 50.2)).toBeLessThan(0.5);
  });

  it('differs from plate to plate: no two are alike', async () => {
    const [straw, brick, soot] = planesOf(await grained({}));
    // 4 standard deviations of the correlation of 36,000 independent blotches
    for (const [a, b] of [
      [straw, brick],
      [straw, soot],
      [brick, soot],
    ])
      expect(Math.abs(likeness(a!, b!))).toBeLessThan(4 / Math.sqrt(36_000));
  });

  it('may be weaker on one plate, and none at all', async () => {
    const [straw, brick, soot] = planesOf(await grained({ strengthPercentOf: { straw: 0, brick: 10 } }));
    const distinct = [straw, brick, soot].map((plane) => new Set(plane!.data).size);
    expect(distinct[0]).toBe(1);
    expect(distinct[1]).toBeGreaterThan(1);
    expect(distinct[2]).toBeGreaterThan(distinct[1]!);
  });

  it('at a reduced scale is the reduced grain, the same blotches in the same places (case 22)', async () => {
    const full = planesOf(await grained({}));
    const half = planesOf(await grained({}, 2));
    const other = planesOf(await grained({ seed: 2 }, 2));
    full.forEach((plane, k) => {
      const reduced = flatPlane(SIDE / 2, SIDE / 2);
      reduceCoverage({ from: plane, to: reduced, scale: 2 }, 0, SIDE / 2);
      expect(half[k]!.width).toBe(SIDE / 2);
      expect(likeness(half[k]!, reduced)).toBeGreaterThan(0.9);
      expect(Math.abs(likeness(other[k]!, reduced))).toBeLessThan(0.1);
    });
  });
});
