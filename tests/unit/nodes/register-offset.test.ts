import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import type { PlatesValue } from '../../../workers/engine/values.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withBypassed, withSettings } from '../support/jobs.ts';
import { drawnPlane, randomPlane } from '../support/pictures.ts';

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** The line on all plates, no grain. */
function jobOf(line: Plane, ppi: number, offset: Settings): Job {
  const job = defaultJob({ asset: bench.drawing(line), ppi });
  return withBypassed(withSettings(job, { 'register-offset': offset }), 'plate-grain');
}

const platesAt = (job: Job, end: string): Promise<PlatesValue> => bench.value(job, `${end}.plates`, 'plates');
const planeOf = (value: PlatesValue, id: string) => value.plates.find((plate) => plate.id === id)!.coverage;

/** Centre of all ink, px from the top left corner; null without any. */
function centre({ width, data }: Plane): [number, number] {
  let ink = 0;
  let sumX = 0;
  let sumY = 0;
  data.forEach((value, i) => {
    ink += value;
    sumX += value * ((i % width) + 0.5);
    sumY += value * (Math.floor(i / width) + 0.5);
  });
  return [sumX / ink, sumY / ink];
}

/** 10 px to a millimetre; a spot of 8 px at 6 mm right of the middle and 2 mm below it. */
const PPI = 254;
const SPOT = drawnPlane(200, 120, (x, y) => (Math.abs(x - 159.5) < 4 && Math.abs(y - 79.5) < 4 ? 255 : 0));

/** How far the spot moves, px. */
async function moved(shift: Settings, feedEdge = 'top', plate = 'brick'): Promise<[number, number]> {
  const job = jobOf(SPOT, PPI, { feedEdge, turnsAbout: 'middle', offsets: { brick: shift } });
  const [x, y] = centre(planeOf(await platesAt(job, 'register-offset'), plate));
  const [x0, y0] = centre(SPOT);
  return [x - x0, y - y0];
}

const rounded = ([x, y]: [number, number]) => [Math.round(x * 100) / 100 + 0, Math.round(y * 100) / 100 + 0];

describe('a plate that is shifted', () => {
  it.each([
    ['top', [0, 10]],
    ['bottom', [0, -10]],
    ['left', [10, 0]],
    ['right', [-10, 0]],
  ])('along the feed moves away from the feed edge: %s', async (feedEdge, by) => {
    expect(rounded(await moved({ alongMm: 1 }, feedEdge))).toEqual(by);
  });

  it.each([
    ['top', [10, 0]],
    ['bottom', [10, 0]],
    ['left', [0, 10]],
    ['right', [0, 10]],
  ])('across the feed moves to the right or down: feed edge %s', async (feedEdge, by) => {
    expect(rounded(await moved({ acrossMm: 1 }, feedEdge))).toEqual(by);
  });

  it('by parts of a pixel moves by parts of a pixel', async () => {
    expect(rounded(await moved({ alongMm: 0.05, acrossMm: -0.125 }))).toEqual([-1.25, 0.5]);
  });

  it('by whole pixels is the same plate elsewhere, byte for byte', async () => {
    const soft = randomPlane(200, 120, 6);
    for (const pixels of [-37, -10, -3, -1, 1, 2, 5, 7, 10, 29]) {
      const shift = { alongMm: pixels / 10, acrossMm: -pixels / 10 };
      const job = jobOf(soft, PPI, { offsets: { brick: shift } });
      const before = planeOf(await platesAt(job, 'plate-grain'), 'brick');
      const after = planeOf(await platesAt(job, 'register-offset'), 'brick');
      const wanted = drawnPlane(200, 120, (x, y) => {
        const [u, v] = [x + pixels, y - pixels];
        return u >= 0 && u < 200 && v >= 0 && v < 120 ? before.data[v * 200 + u]! : 0;
      });
      const differing = after.data.filter((value, i) => value !== wanted.data[i]).length;
      expect([pixels, differing]).toEqual([pixels, 0]);
    }
  });

  it('leaves the other plates where they are', async () => {
    expect(await moved({ alongMm: 1, rotationDeg: 1 }, 'top', 'straw')).toEqual([0, 0]);
    expect(await moved({ alongMm: 1, rotationDeg: 1 }, 'top', 'soot')).toEqual([0, 0]);
  });
});

describe('a plate that is turned', () => {
  /** Where the spot goes when the sheet turns clockwise about its middle. */
  function turned(degrees: number): number[] {
    const turn = (degrees * Math.PI) / 180;
    const [x, y] = centre(SPOT);
    const [u, v] = [x - 100, y - 60];
    return [u * Math.cos(turn) - v * Math.sin(turn) - u, u * Math.sin(turn) + v * Math.cos(turn) - v];
  }

  it.each([5, 1, -3])('by %d degrees turns clockwise about the middle of the sheet', async (rotationDeg) => {
    const [dx, dy] = await moved({ rotationDeg });
    const [x, y] = turned(rotationDeg);
    expect(dx).toBeCloseTo(x!, 1);
    expect(dy).toBeCloseTo(y!, 1);
  });

  it('turns alike whatever the feed edge', async () => {
    const all = await Promise.all(
      ['top', 'right', 'bottom', 'left'].map((edge) => moved({ rotationDeg: 2 }, edge)),
    );
    expect(new Set(all.map((by) => rounded(by).join())).size).toBe(1);
  });
});

describe('a plate stretched by 1.5 mm over 420 mm of feed (case 20)', () => {
  /** 5 px to a millimetre: bars of 1 mm across the sheet, their middles at 5, 46, 87 .. 415 mm. */
  const BARS = Array.from({ length: 11 }, (_, k) => 5 + 41 * k);
  const along = (mm: number) => (BARS.some((bar) => Math.abs(mm - bar) < 0.5) ? 255 : 0);
  const LONG = drawnPlane(40, 2100, (x, y) => (x < 4 || x >= 36 ? 0 : along((y + 0.5) / 5)));
  const WIDE = drawnPlane(2100, 40, (x, y) => (y < 4 || y >= 36 ? 0 : along((x + 0.5) / 5)));

  /** Middle of each bar along the feed, mm. */
  function barsOf({ width, height, data }: Plane): number[] {
    const feed = Math.max(width, height);
    return BARS.map((bar) => {
      let ink = 0;
      let sum = 0;
      for (let at = Math.round((bar - 5) * 5); at < Math.min(feed, Math.round((bar + 5) * 5)); at++) {
        const value = data[width > height ? 20 * width + at : at * width + 20]!;
        ink += value;
        sum += value * (at + 0.5);
      }
      return sum / ink / 5;
    });
  }

  const OFFSET = { offsets: { brick: { stretchMm: 1.5 } } };
  const misfits = async (line: Plane, feedEdge: string) => {
    const plates = await platesAt(jobOf(line, 127, { feedEdge, ...OFFSET }), 'register-offset');
    const still = barsOf(planeOf(plates, 'straw'));
    return barsOf(planeOf(plates, 'brick')).map((bar, k) => bar - still[k]!);
  };

  it.each([
    ['top', LONG],
    ['left', WIDE],
  ])('misfits by 0 at the feed edge, growing evenly to 1.5 mm at the other: %s', async (feedEdge, line) => {
    const found = await misfits(line, feedEdge);
    found.forEach((mm, k) => {
      expect(mm).toBeCloseTo((1.5 * BARS[k]!) / 420, 2);
    });
  });

  it.each([
    ['bottom', LONG],
    ['right', WIDE],
  ])('grows away from the feed edge: %s', async (feedEdge, line) => {
    const found = await misfits(line, feedEdge);
    found.forEach((mm, k) => {
      expect(mm).toBeCloseTo((-1.5 * (420 - BARS[k]!)) / 420, 2);
    });
  });

  it('leaves the plates that reach the press file unmoved', async () => {
    const still = await platesAt(jobOf(LONG, 127, {}), 'plate-grain');
    const delivered = await platesAt(jobOf(LONG, 127, OFFSET), 'plate-grain');
    expect(planeOf(delivered, 'brick').data).toEqual(planeOf(still, 'brick').data);
  });
});

describe('offsets by chance', () => {
  const chance = (settings: Settings) =>
    platesAt(jobOf(SPOT, PPI, { how: 'by-chance', toleranceDeg: 0, ...settings }), 'register-offset');
  const shiftOf = async (id: string, settings: Settings = {}) => {
    const [x, y] = centre(planeOf(await chance(settings), id));
    const [x0, y0] = centre(SPOT);
    return [(x - x0) / 10, (y - y0) / 10] as const;
  };

  it('leave the first plate still, to which the others are registered', async () => {
    expect(await shiftOf('straw')).toEqual([0, 0]);
  });

  it('are the same for the same seed and others for another', async () => {
    expect(await shiftOf('brick', { seed: 4 })).toEqual(await shiftOf('brick', { seed: 4 }));
    expect(await shiftOf('brick', { seed: 4 })).not.toEqual(await shiftOf('brick', { seed: 5 }));
    expect(await shiftOf('brick', { seed: 4 })).not.toEqual(await shiftOf('soot', { seed: 4 }));
  });

  it('stay within the tolerance, and go to both sides', async () => {
    const shifts = await Promise.all(
      Array.from({ length: 12 }, (_, seed) =>
        shiftOf('brick', { seed, toleranceAlongMm: 0.8, toleranceAcrossMm: 0.4 }),
      ),
    );
    for (const [across, along] of shifts) {
      expect(Math.abs(along)).toBeLessThanOrEqual(0.8);
      expect(Math.abs(across)).toBeLessThanOrEqual(0.4);
    }
    for (const axis of [0, 1]) {
      const sides = new Set(shifts.map((shift) => Math.sign(shift[axis]!)));
      expect([...sides].sort()).toEqual([-1, 1]);
    }
  });
});
