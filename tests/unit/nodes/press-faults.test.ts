import { describe, expect, it } from 'vitest';
import { canOccur, PROCESSES, pressFaults } from '../../../src/nodes/press-faults.ts';
import type { PlatesValue } from '../../../workers/engine/values.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { reduceCoverage } from '../../../workers/kernels/reduce.ts';
import { pressFaults as evaluation } from '../../../workers/nodes/press-faults.ts';
import { platesOf } from '../support/grained.ts';
import type { Settings } from '../support/jobs.ts';
import { likeness } from '../support/likeness.ts';
import { localTools } from '../support/local-tools.ts';
import { drawnPlane, flatPlane, percentOf } from '../support/pictures.ts';

const FAULTS = [
  'specks',
  'voids',
  'hickeys',
  'tracks',
  'starvation',
  'streaks',
  'flooding',
  'setOff',
  'ghost',
  'squeeze',
  'pressure',
] as const;

/** All faults off but those that are named. */
const only = (settings: Settings): Settings => ({
  amountPercent: 100,
  ...Object.fromEntries(FAULTS.map((fault) => [`${fault}Percent`, 0])),
  ...settings,
});

async function printed(
  planes: readonly Plane[],
  ppi: number,
  settings: Settings,
  mask?: Plane,
): Promise<Plane[]> {
  const plates = platesOf(planes, ppi);
  const area = mask && { type: 'area', mask, ppi, mm: plates.mm };
  const work = {
    settings: pressFaults.settings.parse(settings),
    inputs: { plates, area },
    scale: 1,
    tools: localTools().tools,
  };
  const value = (await evaluation.run(work)) as { plates: PlatesValue };
  return value.plates.plates.map(({ coverage }) => coverage);
}

/** 102 mm square at 127 ppi, 5 px to a millimetre: a square in the middle. */
const SIDE = 510;
const PPI = 127;
const SQUARE = drawnPlane(SIDE, SIDE, (x, y) =>
  Math.abs(x - 255) < 150 && Math.abs(y - 255) < 150 ? 255 : 0,
);
/** Nearly all of the sheet. */
const LARGE = drawnPlane(SIDE, SIDE, (x, y) =>
  Math.abs(x - 255) < 235 && Math.abs(y - 255) < 235 ? 255 : 0,
);
const one = async (settings: Settings, plate = SQUARE, mask?: Plane) =>
  (await printed([plate], PPI, settings, mask))[0]!;
const differing = (a: Plane, b: Plane) => a.data.filter((value, i) => value !== b.data[i]).length;

describe('press faults', () => {
  it('are none at an amount of 0, and the plate is handed on', async () => {
    expect(await one({ amountPercent: 0 })).toBe(SQUARE);
  });

  it.each(FAULTS)(
    '%s changes the print, more with a greater amount, and only where the process has it',
    async (fault) => {
      const weak = await one(only({ amountPercent: 20, [`${fault}Percent`]: 100, seed: 5 }), LARGE);
      const strong = await one(only({ [`${fault}Percent`]: 100, seed: 5 }), LARGE);
      const change = (plane: Plane) =>
        plane.data.reduce((sum, v, i) => sum + Math.abs(v - LARGE.data[i]!), 0);
      expect(change(strong)).toBeGreaterThan(change(weak));
      expect(change(strong)).toBeGreaterThan(0);
      for (const process of PROCESSES) {
        const plane = await one(only({ [`${fault}Percent`]: 100, seed: 5, process }), LARGE);
        expect([process, change(plane) > 0]).toEqual([process, canOccur(fault, process)]);
      }
    },
  );

  it('keep the pinholes of a stencil from sheet to sheet, but not what dries in', async () => {
    const specks = only({ specksPercent: 100 });
    expect(differing(await one({ ...specks, sheet: 1 }), await one({ ...specks, sheet: 2 }))).toBe(0);
    const voids = only({ voidsPercent: 100 });
    expect(differing(await one({ ...voids, sheet: 1 }), await one({ ...voids, sheet: 2 }))).toBeGreaterThan(
      0,
    );
  });

  it('differ from plate to plate', async () => {
    const [a, b] = await printed([SQUARE, SQUARE], PPI, only({ voidsPercent: 100, tracksPercent: 100 }));
    expect(differing(a!, b!)).toBeGreaterThan(1000);
  });

  it('leave everything outside an area as it was', async () => {
    const mask = drawnPlane(SIDE, SIDE, (x) => (x < 255 ? 255 : 0));
    const out = await one({ amountPercent: 100 }, SQUARE, mask);
    expect(out.data.every((value, i) => i % SIDE < 255 || value === SQUARE.data[i])).toBe(true);
    expect(differing(out, SQUARE)).toBeGreaterThan(0);
  });

  it('run tracks along the feed: columns differ, rows hardly do', async () => {
    const flat = flatPlane(SIDE, SIDE, 200);
    const out = await one(only({ tracksPercent: 100, feedEdge: 'top' }), flat);
    const sums = (step: number, stride: number) =>
      Array.from({ length: SIDE }, (_, k) => {
        let sum = 0;
        for (let i = 0; i < SIDE; i++) sum += out.data[k * step + i * stride]!;
        return sum / SIDE;
      });
    const spread = (values: number[]) => Math.max(...values) - Math.min(...values);
    expect(spread(sums(1, SIDE))).toBeGreaterThan(4 * spread(sums(SIDE, 1)));
    const turned = await one(only({ tracksPercent: 100, feedEdge: 'left' }), flat);
    expect(likeness(out, turned)).toBeLessThan(0.5);
  });

  it('let ink run short towards the end of the feed, whichever edge is fed first', async () => {
    const flat = flatPlane(SIDE, SIDE, 200);
    const end = async (feedEdge: string, row: number) => {
      const out = await one(only({ starvationPercent: 100, starvationMm: 60, feedEdge }), flat);
      return percentOf(out.data.subarray(row * SIDE, (row + 20) * SIDE)) / percentOf(flat.data);
    };
    for (const [feedEdge, fed, last] of [
      ['top', 0, SIDE - 20],
      ['bottom', SIDE - 20, 0],
    ] as const) {
      expect(await end(feedEdge, fed)).toBeCloseTo(1, 2);
      expect(await end(feedEdge, last)).toBeLessThan(0.6);
    }
  });

  it('put the ghost where it was told, further along the feed', async () => {
    const bar = drawnPlane(SIDE, SIDE, (x, y) => (x > 50 && x < 450 && y >= 100 && y < 120 ? 255 : 0));
    for (const [feedEdge, at] of [
      ['top', 310],
      ['bottom', -90],
    ] as const) {
      const out = await one(only({ ghostPercent: 100, ghostMm: 40, feedEdge }), bar);
      const row = Math.max(0, at);
      expect(out.data[row * SIDE + 200]).toBe(at > 0 ? 64 : 0);
    }
  });

  it('mirror the set-off across the feed', async () => {
    const mark = drawnPlane(SIDE, SIDE, (x, y) => (x < 100 && y > 200 && y < 300 ? 255 : 0));
    const out = await one(only({ setOffPercent: 100, setOffMm: 0 }), mark);
    expect(out.data[250 * SIDE + 30]).toBe(255);
    expect(out.data[250 * SIDE + SIDE - 30]).toBe(64);
    expect(out.data[250 * SIDE + 255]).toBe(0);
  });

  it('squeeze ink to the rim: darkest there, palest just inside, between them in the middle', async () => {
    const out = await one(only({ squeezePercent: 100, squeezeMm: 1 }));
    const across = (fromEdge: number) => out.data[255 * SIDE + 106 + fromEdge]!;
    expect(across(1)).toBe(255);
    expect(across(10)).toBeLessThan(170);
    expect(across(100)).toBeGreaterThan(across(10));
    expect(across(100)).toBeLessThan(255);
  });

  it('stand in the same places at a quarter of the scale', async () => {
    const settings = only({
      tracksPercent: 100,
      pressurePercent: 100,
      voidsPercent: 100,
      voidsMm: 4,
      starvationPercent: 60,
    });
    const [full] = await printed([flatPlane(512, 512, 220)], 200, settings);
    const [small] = await printed([flatPlane(128, 128, 220)], 50, settings);
    const reduced = flatPlane(128, 128);
    reduceCoverage({ from: full!, to: reduced, scale: 4 }, 0, 128);
    let off = 0;
    small!.data.forEach((value, i) => {
      off += Math.abs(value - reduced.data[i]!);
    });
    expect(off / small!.data.length).toBeLessThan(1.5);
  });

  it('print a short film of ink paler, by plate', async () => {
    const settings = only({ densityPercent: 80, densityPercentOf: { p2: 90 } });
    const planes = await printed([SQUARE, SQUARE], PPI, settings);
    expect(percentOf(planes[0]!.data) / percentOf(SQUARE.data)).toBeCloseTo(0.8, 2);
    expect(percentOf(planes[1]!.data) / percentOf(SQUARE.data)).toBeCloseTo(0.9, 2);
  });

  it.each([
    { specksMm: 0 },
    { tracksMm: 5000 },
    { process: 'gravure' },
    { sheet: 0 },
    { amountPercent: 101 },
  ])('refuse %j', (settings) => {
    expect(pressFaults.settings.safeParse(settings).success).toBe(false);
  });
});
