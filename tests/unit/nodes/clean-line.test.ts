import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';

/** 10 px to a millimetre. */
const PPI = 254;

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

async function cleaned(line: Plane, settings: Settings = {}): Promise<Plane> {
  const job = withSettings(defaultJob({ asset: bench.drawing(line), ppi: PPI }), { 'clean-line': settings });
  return (await bench.value(job, 'clean-line.drawing', 'drawing')).line;
}

/** An upright bar of 10 px with edges of half coverage. */
const bar = (x: number) => (x >= 40 && x < 50 ? 255 : x === 39 || x === 50 ? 128 : 0);
const BAR = drawnPlane(100, 80, bar);
const across = ({ data, width }: Plane, from: number, to: number) => [
  ...data.subarray(10 * width + from, 10 * width + to),
];

describe('clean artwork', () => {
  it('stays as it is, soft edges and all', async () => {
    expect((await cleaned(BAR)).data).toEqual(BAR.data);
  });

  it('without soft edges is paper and line only', async () => {
    const hard = await cleaned(BAR, { softness: 0 });
    expect(across(hard, 38, 52)).toEqual([0, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 0]);
  });

  it('parts at the level that is set', async () => {
    const grey = drawnPlane(60, 40, (x) => (x < 20 ? 0 : x < 30 ? 100 : 255));
    const lineAt = async (level: number) =>
      (await cleaned(grey, { threshold: 'set', level })).data[25]! >= 128;
    expect(await Promise.all([10, 38, 41, 90].map(lineAt))).toEqual([true, true, false, false]);
  });
});

describe('a scan', () => {
  const random = randomOf(5);
  const noise = Array.from({ length: 120 * 90 }, () => Math.round((random() - 0.5) * 30));
  /** Grey paper, grey line, blurred edges: nothing is wholly paper or line. */
  const scan = drawnPlane(120, 90, (x, y) => {
    const edge = Math.min(1, Math.max(0, (8 - Math.abs(x - 60)) / 3));
    return Math.round(55 + 140 * edge) + noise[y * 120 + x]!;
  });

  it('is parted between its paper and its line', async () => {
    const { data } = await cleaned(scan);
    for (let y = 0; y < 90; y++)
      for (let x = 0; x < 120; x++) {
        const off = Math.abs(x - 60);
        if (off < 5) expect(data[y * 120 + x]).toBeGreaterThanOrEqual(128);
        if (off > 8) expect(data[y * 120 + x]).toBeLessThan(128);
      }
  });
});

describe('specks', () => {
  /** A bar, and squares of 1 to 6 px a side: 0.01 to 0.36 mm2. */
  const dusty = drawnPlane(120, 60, (x, y) => {
    if (y >= 40 && y < 50) return 255;
    const side = Math.floor(x / 18) + 1;
    return side <= 6 && x % 18 < side && y >= 10 && y < 10 + side ? 255 : 0;
  });
  const left = async (speckMm2: number) => {
    const { data } = await cleaned(dusty, { speckMm2 });
    return [0, 1, 2, 3, 4, 5].filter((k) => data[10 * 120 + k * 18] === 255).map((k) => k + 1);
  };

  it('smaller than the measure go, others stay', async () => {
    expect(await left(0.03)).toEqual([2, 3, 4, 5, 6]);
    expect(await left(0.1)).toEqual([4, 5, 6]);
    expect(await left(0.24)).toEqual([5, 6]);
  });

  it('all stay at a measure of 0', async () => {
    expect(await left(0)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it('that touch a line at a corner belong to it', async () => {
    const touching = drawnPlane(60, 60, (x, y) => (y >= 40 && y < 50 ? 255 : x === 20 && y === 39 ? 255 : 0));
    expect((await cleaned(touching)).data).toEqual(touching.data);
  });

  it('do not take the line away', async () => {
    const { data } = await cleaned(dusty, { speckMm2: 5 });
    expect(data[45 * 120 + 60]).toBe(255);
    expect(data[12 * 120 + 90]).toBe(0);
  });
});

describe('heavier by', () => {
  it('0.1 mm moves both edges of a line outward by 0.1 mm', async () => {
    expect(across(await cleaned(BAR, { heavierMm: 0.1 }), 36, 42)).toEqual([0, 0, 128, 255, 255, 255]);
    expect(across(await cleaned(BAR, { heavierMm: 0.1 }), 48, 54)).toEqual([255, 255, 255, 128, 0, 0]);
  });

  it('-0.1 mm moves both edges inward', async () => {
    expect(across(await cleaned(BAR, { heavierMm: -0.1 }), 38, 43)).toEqual([0, 0, 128, 255, 255]);
  });

  it('0.3 mm and then measured has grown by 0.6 mm', async () => {
    const ink = (plane: Plane) => across(plane, 0, 100).reduce((sum, value) => sum + value, 0) / 255;
    expect(ink(await cleaned(BAR, { heavierMm: 0.3 })) - ink(BAR)).toBeCloseTo(6, 1);
  });
});

describe('pinholes', () => {
  /** A solid with a hole of one pixel, 0.01 mm2, and one of 3 x 3: 0.09 mm2. */
  const holed = drawnPlane(60, 40, (x, y) => {
    const solid = x >= 10 && x < 50 && y >= 10 && y < 30;
    const hole = (x === 20 && y === 20) || (x >= 30 && x < 33 && y >= 20 && y < 23);
    return solid && !hole ? 255 : 0;
  });
  const open = async (line: Plane, settings: Settings) => {
    const { data } = await cleaned(line, settings);
    return [data[20 * 60 + 20]! < 128, data[21 * 60 + 31]! < 128];
  };

  it('of clean artwork are left as long as nobody asks', async () => {
    expect(await open(holed, {})).toEqual([true, true]);
  });

  it('are filled up to a size', async () => {
    expect(await open(holed, { pinholeMm2: 0.02 })).toEqual([false, true]);
    expect(await open(holed, { pinholeMm2: 0.1 })).toEqual([false, false]);
    expect(await open(holed, { pinholeMm2: 0 })).toEqual([true, true]);
  });
});
