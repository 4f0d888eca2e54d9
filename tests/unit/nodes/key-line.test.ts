import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withBypassed, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

const PPI = 600;

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** An antialiased line across the sheet, so many px wide, at an angle. */
function slanted(widthPx: number, degrees: number): Plane {
  const turn = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return drawnPlane(120, 120, (x, y) => {
    const off = Math.abs((x - 59.7) * cos + (y - 60.2) * sin);
    return Math.round(255 * Math.min(1, Math.max(0, widthPx / 2 + 0.5 - off)));
  });
}

/** A solid of straw everywhere, the line in soot alone, on a sheet without texture, all plates in register. */
function inRegister(line: Plane, keyLine: Settings = {}): Job {
  const job = defaultJob({ asset: bench.drawing(line), ppi: PPI });
  const set = withSettings(job, {
    'key-line': { tintPercentOf: { straw: 0, brick: 0, soot: 100 }, ...keyLine },
    'paper-stock': { toothPercent: 0, fibresPercent: 0 },
  });
  return withRecipes(withBypassed(set, 'plate-grain', 'register-offset'), {}, { straw: 100 });
}

const LINES = [3, 4.5, 12, 30].flatMap((width) =>
  [0, 17, 45, 90].map((degrees) => [width, degrees] as const),
);

describe('a soft line of one plate over the solid of another, knocked out (case 6)', () => {
  it.each(LINES)(
    '%d px wide at %d degrees leaves no pixel less than fully covered',
    async (width, degrees) => {
      const { plates } = await bench.value(inRegister(slanted(width, degrees)), 'key-line.plates', 'plates');
      const [straw, , soot] = plates.map(({ coverage }) => coverage.data);
      expect(straw!.findIndex((value, i) => value + soot![i]! < 255)).toBe(-1);
    },
  );

  it.each(LINES)('%d px wide at %d degrees has no pale rim in the proof', async (width, degrees) => {
    const { pixels } = await bench.value(inRegister(slanted(width, degrees)), 'proof.proof', 'proof');
    /** Lighter in some colour than both of its neighbours, by more than a byte is rounded. */
    const paler = (i: number, step: number) =>
      [0, 1, 2].some((c) => pixels[i + c]! > Math.max(pixels[i + c - step]!, pixels[i + c + step]!) + 1);
    const pale: [number, number][] = [];
    for (let y = 1; y < 119; y++)
      for (let x = 1; x < 119; x++) {
        const i = (y * 120 + x) * 3;
        if (paler(i, 3) || paler(i, 3 * 120)) pale.push([x, y]);
      }
    expect(pale).toEqual([]);
  });

  it('is knocked out in the middle of a broad line all the same', async () => {
    const { plates } = await bench.value(inRegister(slanted(30, 0)), 'key-line.plates', 'plates');
    const [straw, , soot] = plates.map(({ coverage }) => coverage.data);
    expect([straw![60 * 120 + 60], soot![60 * 120 + 60]]).toEqual([0, 255]);
  });
});

describe('fills under the line', () => {
  const BROAD = slanted(30, 0);
  const middle = async (keyLine: Settings, straw = 70) => {
    const job = withRecipes(inRegister(BROAD, keyLine), {}, { straw });
    const { plates } = await bench.value(job, 'key-line.plates', 'plates');
    return plates.map(({ coverage }) => Math.round(coverage.data[60 * 120 + 60]! / 2.55));
  };

  it('kept: 40 % of line over 70 % of fill on one plate are 70 %, never 110 or 82 (case 10)', async () => {
    expect(await middle({ fills: 'kept', tintPercent: 40, tintPercentOf: {} })).toEqual([70, 40, 40]);
  });

  it('kept: the line prints at its tint where that is more', async () => {
    expect(await middle({ fills: 'kept', tintPercent: 90, tintPercentOf: {} })).toEqual([90, 90, 90]);
  });

  it('knocked out: only the line prints', async () => {
    expect(await middle({ tintPercent: 40, tintPercentOf: {} })).toEqual([40, 40, 40]);
  });

  it('knocked out on one plate, kept on another, each at its own tint', async () => {
    const keyLine = {
      fills: 'knocked-out',
      fillsOf: { straw: 'kept' },
      tintPercent: 30,
      tintPercentOf: { straw: 0, soot: 100 },
    };
    expect(await middle(keyLine)).toEqual([70, 30, 100]);
  });

  it('reach under its edge by the inset', async () => {
    const strawAlong = async (insetMm: number) => {
      const job = inRegister(BROAD, { insetMm });
      const { plates } = await bench.value(job, 'key-line.plates', 'plates');
      return [...plates[0]!.coverage.data.subarray(60 * 120, 60 * 120 + 60)].filter((value) => value === 255)
        .length;
    };
    const tenPx = (10 * 25.4) / PPI;
    expect((await strawAlong(tenPx)) - (await strawAlong(0))).toBe(10);
  });

  it('and the plates themselves stay as they were outside the line', async () => {
    const job = withRecipes(inRegister(BROAD), {}, { straw: 70 });
    const { plates } = await bench.value(job, 'key-line.plates', 'plates');
    expect(plates.map(({ coverage }) => coverage.data[60 * 120 + 5])).toEqual([179, 0, 0]);
  });
});
