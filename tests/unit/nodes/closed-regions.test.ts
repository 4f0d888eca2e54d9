import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BadInput } from '../../../src/graph/complaint.ts';
import type { RegionsValue } from '../../../workers/engine/values.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withBypassed, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane, flatPlane } from '../support/pictures.ts';

const PPI = 600;
const MM_PER_PX = 25.4 / PPI;

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

const jobOf = (line: Plane, settings: Settings = {}) =>
  withSettings(defaultJob({ asset: bench.drawing(line), ppi: PPI }), {
    'closed-regions': { gapMm: 0, ...settings },
  });

const regionsOf = (line: Plane, settings: Settings = {}): Promise<RegionsValue> =>
  bench.value(jobOf(line, settings), 'closed-regions.regions', 'regions');

const labelAt = ({ labels }: RegionsValue, x: number, y: number) => labels.data[y * labels.width + x]!;
const areasPx = ({ table }: RegionsValue) => table.map(({ areaMm2 }) => Math.round(areaMm2 / MM_PER_PX ** 2));

describe('a diamond with a one-pixel diagonal outline (case 1)', () => {
  const diamond = drawnPlane(160, 150, (x, y) => (Math.abs(x - 80) + Math.abs(y - 75) === 60 ? 255 : 0));

  it('parts exactly two areas', async () => {
    const inside = 2 * 60 * 59 + 1;
    expect(areasPx(await regionsOf(diamond))).toEqual([160 * 150 - 240 - inside, inside]);
  });

  it('does not leak at its corners nor through its steps', async () => {
    const found = await regionsOf(diamond);
    const outside = [
      [80, 14],
      [80, 136],
      [19, 75],
      [141, 75],
      [49, 44],
      [111, 106],
    ] as const;
    const inside = [
      [80, 16],
      [80, 134],
      [21, 75],
      [139, 75],
      [51, 46],
      [109, 104],
    ] as const;
    expect(outside.map(([x, y]) => labelAt(found, x, y))).toEqual([1, 1, 1, 1, 1, 1]);
    expect(inside.map(([x, y]) => labelAt(found, x, y))).toEqual([2, 2, 2, 2, 2, 2]);
  });

  it('says which area touches the frame, and where each lies', async () => {
    const { table } = await regionsOf(diamond);
    expect(table.map(({ touchesFrame }) => touchesFrame)).toEqual([true, false]);
    const middle = table[1]!.anchorMm.map((mm) => mm / MM_PER_PX);
    expect(middle[0]).toBeCloseTo(80.5, 6);
    expect(middle[1]).toBeCloseTo(75.5, 6);
    expect(table[1]!.boxMm.map((mm) => Math.round(mm / MM_PER_PX))).toEqual([21, 16, 140, 135]);
  });

  it('makes the two areas neighbours along its outline', async () => {
    const { table } = await regionsOf(diamond);
    expect(table.map(({ neighbours }) => neighbours.map(({ label }) => label))).toEqual([[2], [1]]);
    // the outline belongs to the outside, so its inner edge counts; lengths are at most about one part in twenty off
    const length = table[0]!.neighbours[0]!.sharedMm / MM_PER_PX;
    expect(Math.abs(length / (4 * 59.5 * Math.SQRT2) - 1)).toBeLessThan(0.055);
    expect(table[1]!.neighbours[0]!.sharedMm).toBe(table[0]!.neighbours[0]!.sharedMm);
  });
});

describe('a hatching of 40 x 40 cells of 0.5 mm (case 4)', () => {
  const CELL = 12;
  const SIDE = 40 * CELL;
  const [left, top] = [30, 30];
  /** A ring of 6 px around a counter of 18 x 19 px: 0.61 mm2. */
  const ring = (x: number, y: number) =>
    x >= -6 && y >= -6 && x < 24 && y < 25 && (x < 0 || y < 0 || x >= 18 || y >= 19);
  const ringed = (x: number, y: number) => x >= -6 && y >= -6 && x < 24 && y < 25;

  function hatched(letterX: number, letterY: number): Plane {
    return drawnPlane(left + SIDE + 90, top + SIDE + 30, (x, y) => {
      if (ringed(x - letterX, y - letterY)) return ring(x - letterX, y - letterY) ? 255 : 0;
      const [u, v] = [x - left, y - top];
      if (u < 0 || v < 0 || u > SIDE || v > SIDE) return 0;
      return u % CELL === 0 || v % CELL === 0 ? 255 : 0;
    });
  }

  const BESIDE = [left + SIDE + 30, 100] as const;
  const AMONG = [left + 10 * CELL + 6, top + 20 * CELL + 6] as const;

  it.each([
    ['beside it', BESIDE],
    ['among its cells', AMONG],
  ])('is one region, and the counter of a letter %s stays another', async (_, [x, y]) => {
    const found = await regionsOf(hatched(x, y), { smallestMm2: 0.5 });
    expect(found.table).toHaveLength(3);
    const field = labelAt(found, 2, 2);
    const hatching = labelAt(found, left + 6, top + 6);
    const counter = labelAt(found, x + 9, y + 9);
    expect(new Set([field, hatching, counter]).size).toBe(3);
    expect(areasPx(found)[counter - 1]).toBe(18 * 19);
    for (let v = 6; v < SIDE; v += CELL)
      for (let u = 6; u < SIDE; u += CELL) {
        if (ringed(left + u - x, top + v - y)) continue;
        expect(labelAt(found, left + u, top + v)).toBe(hatching);
      }
  });

  it('covers the thin lines between its cells', async () => {
    const found = await regionsOf(hatched(...BESIDE), { smallestMm2: 0.5 });
    const hatching = labelAt(found, left + 6, top + 6);
    for (let u = CELL; u < SIDE; u += CELL) expect(labelAt(found, left + u, top + 100)).toBe(hatching);
  });

  it('keeps its printing line as it was', async () => {
    const line = hatched(...BESIDE);
    const job = withBypassed(jobOf(line, { smallestMm2: 0.5 }), 'plate-grain');
    const { plates } = await bench.value(job, 'plate-grain.plates', 'plates');
    expect(plates.map(({ coverage }) => coverage.data.every((value, i) => value === line.data[i]))).toEqual([
      true,
      true,
      true,
    ]);
  });

  it('is 1600 regions and more when nothing is too small', async () => {
    expect((await regionsOf(hatched(...BESIDE), { smallestMm2: 0 })).table).toHaveLength(1600 + 2);
  });
});

describe('regions reach under the line', () => {
  /** A bar of 40 px between two fields. */
  const bar = drawnPlane(120, 40, (x) => (x >= 40 && x < 80 ? 255 : 0));

  it('until they meet on its centre, so that no pixel is left over', async () => {
    const found = await regionsOf(bar);
    expect(found.labels.data.includes(0)).toBe(false);
    expect([59, 60].map((x) => labelAt(found, x, 20))).toEqual([1, 2]);
  });

  it('as far as the tuck and no farther', async () => {
    const found = await regionsOf(bar, { tuckMm: 10 * MM_PER_PX });
    expect([49, 50, 69, 70].map((x) => labelAt(found, x, 20))).toEqual([1, 0, 0, 2]);
  });

  it('not at all without a tuck', async () => {
    const found = await regionsOf(bar, { tuckMm: 0 });
    expect([39, 40, 79, 80].map((x) => labelAt(found, x, 20))).toEqual([1, 0, 0, 2]);
  });
});

describe('a small area', () => {
  /** A box of 10 x 10 px, 0.18 mm2, in the middle of a field. */
  const small = drawnPlane(100, 100, (x, y) => {
    const [u, v] = [x - 40, y - 40];
    return u >= 0 && v >= 0 && u <= 11 && v <= 11 && (u === 0 || v === 0 || u === 11 || v === 11) ? 255 : 0;
  });

  it('joins the region around it', async () => {
    const found = await regionsOf(small, { smallestMm2: 0.3 });
    expect(found.table).toHaveLength(1);
    expect(labelAt(found, 45, 45)).toBe(labelAt(found, 5, 5));
  });

  it('is a region when it is not too small', async () => {
    expect((await regionsOf(small, { smallestMm2: 0.1 })).table).toHaveLength(2);
    expect((await regionsOf(small, { smallestMm2: 0 })).table).toHaveLength(2);
  });
});

describe('at the anchor of every region each plate holds the tint of its recipe', () => {
  /** Rings, spokes and a frame: regions of many shapes. */
  const web = drawnPlane(420, 360, (x, y) => {
    const [u, v] = [x - 210, y - 180];
    const ring = Math.abs((Math.hypot(u, v) % 45) - 22) < 2;
    const spoke = Math.abs(u * v) < 200 || Math.abs(Math.abs(u) - Math.abs(v)) < 2;
    return ring || spoke ? 255 : 0;
  });

  it('before the line is printed, and without grain', async () => {
    const plain = jobOf(web, { smallestMm2: 0.05 });
    const { ids, table } = await bench.value(plain, 'closed-regions.regions', 'regions');
    expect(table.length).toBeGreaterThan(40);
    const recipes = Object.fromEntries(
      ids.map((id, i) => [id, { straw: (i * 7) % 101, brick: (i * 13) % 101, soot: i % 2 === 0 ? 12.5 : 0 }]),
    );
    const { plates } = await bench.value(withRecipes(plain, recipes), 'fill-plates.plates', 'plates');
    for (const [i, { anchorMm }] of table.entries()) {
      const [x, y] = anchorMm.map((mm) => Math.floor(mm / MM_PER_PX));
      const tints = plates.map(({ coverage }) => coverage.data[y! * 420 + x!]);
      const { straw, brick, soot } = recipes[ids[i]!]!;
      expect(tints).toEqual([straw, brick, soot].map((percent) => Math.round((percent! * 255) / 100)));
    }
  });
});

describe('a drawing without regions is refused', () => {
  const refusal = (line: Plane, clean: Settings = {}) =>
    bench.value(withSettings(jobOf(line), { 'clean-line': clean }), 'closed-regions.regions', 'regions');

  it('when it is all line', async () => {
    await expect(refusal(flatPlane(60, 60, 255))).rejects.toThrow(BadInput);
    await expect(refusal(flatPlane(60, 60, 255))).rejects.toThrow(/all line.*negative/);
  });

  it('when it is all paper', async () => {
    await expect(refusal(flatPlane(60, 60))).rejects.toThrow(/no line is left/);
  });

  it('when all its line was taken for specks', async () => {
    const dot = drawnPlane(60, 60, (x, y) => (x === 30 && y === 30 ? 255 : 0));
    await expect(refusal(dot)).rejects.toThrow(/no line is left.*specks/);
  });
});
