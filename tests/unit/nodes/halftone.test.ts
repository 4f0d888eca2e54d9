import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { grownTint } from '../../../src/ink/tints.ts';
import { dotForTint } from '../../../src/ink/tone-off.ts';
import type { PlatesValue } from '../../../workers/engine/values.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { Bench } from '../support/engine.ts';
import { dotsOf, halftoned } from '../support/halftoned.ts';
import { defaultJob, reopened, type Settings, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane, flatPlane, percentOf } from '../support/pictures.ts';

const PPI = 600;

/** A soft-edged line so many px wide, at an angle. */
function slanted(side: number, widthPx: number, degrees: number, ground = 0): Plane {
  const turn = (degrees * Math.PI) / 180;
  const middle = (side - 1) / 2;
  return drawnPlane(side, side, (x, y) => {
    const off = Math.abs((x - middle) * Math.cos(turn) + (y - middle) * Math.sin(turn));
    const covered = Math.min(1, Math.max(0, widthPx / 2 + 0.5 - off));
    return Math.round(ground + (255 - ground) * covered);
  });
}

const SCREENS: Settings[] = [
  { screen: 'am', lpi: 45 },
  { screen: 'fm', dotMm: 0.1 },
];

describe.each(SCREENS)('antialiased art on film, $screen (case 16)', (screen) => {
  it.each([1, 2, 4])('has two values only, at %d device pixels to one', async (times) => {
    const out = await dotsOf(slanted(200, 11.8, 20, 90), PPI, { ...screen, devicePpi: PPI * times });
    expect(out.width).toBe(200 * times);
    expect([...new Set(out.data)].sort((a, b) => a - b)).toEqual([0, 255]);
  });

  it.each([
    [1, 0],
    [1, 17],
    [2, 45],
    [4, 72],
  ])(
    'a line of 0.5 mm stays within a pixel, no stray dot beside it nor hole in it (%d, %d degrees)',
    async (times, deg) => {
      const px = (0.5 * PPI) / 25.4;
      const side = 160;
      const out = await dotsOf(slanted(side, px, deg), PPI, { ...screen, devicePpi: PPI * times });
      const turn = (deg * Math.PI) / 180;
      const wrong: string[] = [];
      for (let y = 0; y < out.height; y++)
        for (let x = 0; x < out.width; x++) {
          const [u, v] = [(x + 0.5) / times - side / 2, (y + 0.5) / times - side / 2];
          const off = Math.abs(u * Math.cos(turn) + v * Math.sin(turn)) - px / 2;
          const inked = out.data[y * out.width + x] === 255;
          if ((inked && off > 0.5 + 0.5 / times) || (!inked && off < -0.5 - 0.5 / times))
            wrong.push(`${x} ${y}`);
        }
      expect(wrong).toEqual([]);
    },
  );

  it('a hairline thinner than two pixels stays whole', async () => {
    const out = await dotsOf(slanted(120, 1.3, 30), PPI, screen);
    const rows = Array.from({ length: 100 }, (_, y) => out.data.subarray((y + 10) * 120, (y + 11) * 120));
    expect(rows.findIndex((row) => !row.includes(255))).toBe(-1);
  });

  it('solids have no hole and paper no dot', async () => {
    const solid = await dotsOf(flatPlane(700, 700, 255), PPI, screen);
    const paper = await dotsOf(flatPlane(700, 700, 0), PPI, screen);
    expect([solid.data.includes(0), paper.data.includes(255)]).toEqual([false, false]);
  });

  it('a tint keeps its dots up to the line that bounds it', async () => {
    const out = await dotsOf(slanted(400, 24, 0, 128), PPI, screen);
    const beside = (from: number, to: number) => {
      let ink = 0;
      for (let y = 0; y < 400; y++) for (let x = from; x < to; x++) ink += out.data[y * 400 + x]! / 255;
      return ink / (400 * (to - from));
    };
    expect(beside(150, 186)).toBeGreaterThan(0.4);
    expect(beside(150, 186)).toBeLessThan(0.6);
  });
});

describe('the tone curve', () => {
  const stock = { lab: [95, 0.5, -2] as [number, number, number], surface: 'uncoated' as const };
  const ink = { id: 'soot', name: 'Soot', lab: [20, 1, 1] as [number, number, number], opacity: 0.02 };

  it('taken off makes dots that grow to the tint', () => {
    const dot = dotForTint({ ...ink, gain: 0.17 }, stock);
    for (const tint of [0.1, 0.3, 0.5, 0.8]) expect(grownTint(dot(tint), 0.17)).toBeCloseTo(tint, 5);
    expect([dot(0), dot(1)]).toEqual([0, 1]);
  });

  it('is left on as it is, and taken off when asked for, once, and says so', async () => {
    const plate = flatPlane(512, 512, 128);
    const asIs = await halftoned([plate], PPI);
    const off = await halftoned([plate], PPI, { tone: 'compensated' });
    const tone = dotForTint(ink, stock)(128 / 255) * 100;
    expect(percentOf(asIs.plates.plates[0]!.coverage.data)).toBeCloseTo((128 / 255) * 100, 0);
    expect(percentOf(off.plates.plates[0]!.coverage.data)).toBeCloseTo(tone, 0);
    expect(tone).toBeLessThan(48);
    expect(off.complaints.map(({ code }) => code)).toEqual(['tone-curve-applied']);
    expect(off.plates.plates[0]!.screen!.toneApplied).toBe(true);
    const planned = await halftoned([plate], PPI, { how: 'planned', tone: 'compensated' });
    const twice = await halftoned([plate], PPI, { tone: 'compensated' }, { value: planned.plates });
    const once = await dotsOf(planned.plates.plates[0]!.coverage, PPI);
    expect(twice.plates.plates[0]!.coverage.data).toEqual(once.data);
  });
});

describe('halftone', () => {
  it('gives the strongest ink 45 degrees, the next two 30 more and less', async () => {
    const { plates } = await halftoned([flatPlane(9, 9, 9), flatPlane(9, 9, 9), flatPlane(9, 9, 9)], PPI);
    expect(plates.plates.map(({ screen }) => screen!.angleDeg)).toEqual([45, 75, 15]);
  });

  it('lays dots of several plates elsewhere', async () => {
    const { plates } = await halftoned([flatPlane(256, 256, 40), flatPlane(256, 256, 40)], PPI, {
      screen: 'fm',
    });
    const [one, two] = plates.plates.map(({ coverage }) => coverage.data);
    let both = 0;
    one!.forEach((value, i) => {
      if (value === 255 && two![i] === 255) both++;
    });
    expect(both / one!.length).toBeLessThan(0.05);
  });

  it('only notes a plan for a press that makes its own dots', async () => {
    const plate = flatPlane(64, 64, 100);
    const { plates } = await halftoned([plate], PPI, { how: 'planned', lpi: 71 });
    expect(plates.plates[0]!.coverage).toBe(plate);
    expect(plates.plates[0]!.screen).toMatchObject({ how: 'planned', kind: 'am', lpi: 71, angleDeg: 45 });
  });

  it('shows the tint in a preview, at the size of the preview', async () => {
    const { plates } = await halftoned([flatPlane(64, 64, 100)], PPI, { devicePpi: 1200 }, { scale: 4 });
    expect([plates.ppi, plates.plates[0]!.coverage.data[5]]).toEqual([PPI, 100]);
  });

  it('snaps a device to a whole multiple of the drawing and says so', async () => {
    const { plates, complaints } = await halftoned([flatPlane(30, 30, 100)], PPI, { devicePpi: 1000 });
    expect([plates.ppi, plates.plates[0]!.coverage.width]).toEqual([1200, 60]);
    expect(complaints).toContainEqual(expect.objectContaining({ code: 'device-ppi-snapped', measure: 1200 }));
  });

  it('refuses a device whose plates would not fit, and says what to do', async () => {
    await expect(halftoned([flatPlane(4000, 2000, 0)], 300, { devicePpi: 4800 })).rejects.toThrow(
      /fewer ppi/,
    );
  });

  it.each([
    ['a screen of dots', { screen: 'fm', dotMm: 0.1 }],
    ['an AM screen', { lpi: 45 }],
  ])('warns when %s would be screened again', async (_, first) => {
    const once = await halftoned([flatPlane(200, 200, 100)], PPI, first);
    expect(once.complaints).toEqual([]);
    const scanned = once.plates.plates.map(({ screen: _gone, ...plate }) => plate);
    for (const plates of [once.plates.plates, scanned]) {
      const { complaints } = await halftoned([flatPlane(1, 1)], PPI, {}, { value: { plates } });
      expect(complaints).toContainEqual(
        expect.objectContaining({ code: 'screened-twice', severity: 'warning' }),
      );
    }
  });

  it('warns when a hard grain would be screened, not when it is soft', async () => {
    const codes = async (grainHardness: number) =>
      (await halftoned([flatPlane(20, 20, 100)], PPI, {}, { value: { grainHardness } })).complaints.map(
        ({ code }) => code,
      );
    expect(await codes(80)).toEqual(['screened-twice']);
    expect(await codes(15)).toEqual([]);
  });

  it('does not take line art for dots', async () => {
    const lines = drawnPlane(300, 300, (x, y) => ((x + y) % 20 < 6 ? ((x + y) % 20 < 1 ? 120 : 255) : 0));
    expect((await halftoned([lines], PPI)).complaints).toEqual([]);
  });

  it('warns of a ruling whose cells have hardly a pixel', async () => {
    const { complaints } = await halftoned([flatPlane(20, 20, 100)], 300, { lpi: 100 });
    expect(complaints.map(({ code }) => code)).toEqual(['screen-too-fine']);
  });
});

describe('halftone on its way to the press', () => {
  let bench: Bench;
  beforeAll(() => {
    bench = new Bench();
  });
  afterAll(() => bench.close());

  it('is made at the size of the device, the same by two workers as by one', async () => {
    const line = slanted(150, 6, 30);
    const job = defaultJob({ asset: bench.drawing(line), ppi: 300 });
    const nodes = [
      ...job.graph.nodes,
      { id: 'halftone', kind: 'halftone', settings: { devicePpi: 600 }, bypassed: false },
    ];
    const wires = job.graph.wires.flatMap((wire) =>
      wire.to.node === 'press-file'
        ? [
            { from: wire.from, to: { node: 'halftone', port: 'plates' } },
            { from: { node: 'halftone', port: 'plates' }, to: wire.to },
          ]
        : [wire],
    );
    const graph = { nodes, wires };
    const screened = reopened(withRecipes(withSettings({ ...job, graph }, {}), {}, { straw: 40, brick: 70 }));
    const alone = new Bench(1);
    alone.drawing(line);
    try {
      const both: PlatesValue[] = [];
      for (const each of [bench, alone]) both.push(await each.value(screened, 'halftone.plates', 'plates'));
      expect(both[0]!.ppi).toBe(600);
      expect(both.map(({ plates }) => plates.map(({ coverage }) => [...coverage.data]))[0]).toEqual(
        both[1]!.plates.map(({ coverage }) => [...coverage.data]),
      );
    } finally {
      await alone.close();
    }
  });
});
