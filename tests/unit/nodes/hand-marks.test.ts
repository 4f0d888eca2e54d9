import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withBypassed, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

const PPI = 254;
const WIDTH = 200;
const HEIGHT = 100;
const byte = (percent: number) => Math.round((percent * 255) / 100);

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** A sheet of 20 x 10 mm in one flat recipe, with another node between fill and line. */
function jobWith(kind: string, settings: Settings, recipe: Record<string, number>): Job {
  const line = drawnPlane(WIDTH, HEIGHT, (x) => (x < 4 ? 255 : 0));
  const job = defaultJob({ asset: bench.drawing(line), ppi: PPI });
  const node = { id: 'own', kind, settings, bypassed: false };
  const wires = job.graph.wires.map((wire) =>
    wire.from.node === 'fill-plates' ? { ...wire, from: { node: 'own', port: 'plates' } } : wire,
  );
  const graph = {
    nodes: [...job.graph.nodes, node],
    wires: [...wires, { from: { node: 'fill-plates', port: 'plates' }, to: { node: 'own', port: 'plates' } }],
  };
  return withRecipes(withBypassed({ ...job, graph }, 'plate-grain'), {}, recipe);
}

const stroke = (more: Settings): Settings => ({
  id: 'm',
  does: 'lay',
  plates: ['straw'],
  tintPercent: 40,
  widthMm: 2,
  edge: 'clean',
  points: [
    [4, 5, 1],
    [16, 5, 1],
  ],
  ...more,
});
const marked = async (marks: Settings[], recipe: Record<string, number>) => {
  const { plates } = await bench.value(jobWith('hand-marks', { marks }, recipe), 'own.plates', 'plates');
  return Object.fromEntries(plates.map(({ id, coverage }) => [id, coverage.data]));
};
const MIDDLE = 50 * WIDTH + 100;
const BESIDE = 20 * WIDTH + 100;

describe('hand marks', () => {
  it('laid on an ink leave the stronger: 40 % on 70 % is 70 % (case 10)', async () => {
    const { straw } = await marked([stroke({ tintPercent: 40 })], { straw: 70 });
    expect([straw![MIDDLE], straw![BESIDE]]).toEqual([byte(70), byte(70)]);
    const { straw: darker } = await marked([stroke({ tintPercent: 90 })], { straw: 70 });
    expect([darker![MIDDLE], darker![BESIDE]]).toEqual([byte(90), byte(70)]);
  });

  it('lift a share of what is there, or down to a tint, and never add', async () => {
    const { straw: half } = await marked([stroke({ does: 'lift', tintPercent: 50 })], { straw: 80 });
    expect(Math.abs(half![MIDDLE]! - byte(40))).toBeLessThanOrEqual(1);
    const { straw: down } = await marked([stroke({ does: 'lift-to', tintPercent: 30 })], { straw: 80 });
    expect(down![MIDDLE]).toBe(byte(30));
    const { straw: pale } = await marked([stroke({ does: 'lift-to', tintPercent: 30 })], { straw: 20 });
    expect(pale![MIDDLE]).toBe(byte(20));
  });

  it('go through all plates in one stroke where none is named', async () => {
    const recipe = { straw: 80, brick: 60, soot: 100 };
    const plates = await marked([stroke({ does: 'lift', tintPercent: 100, plates: [] })], recipe);
    for (const data of Object.values(plates)) expect(data[MIDDLE]).toBe(0);
  });

  it('follow one another in the order they were drawn', async () => {
    const marks = [stroke({ tintPercent: 90 }), stroke({ id: 'n', does: 'set', tintPercent: 10 })];
    expect((await marked(marks, { straw: 40 })).straw![MIDDLE]).toBe(byte(10));
    expect((await marked(marks.toReversed(), { straw: 40 })).straw![MIDDLE]).toBe(byte(90));
  });

  it('are as wide as the hand presses', async () => {
    const across = (data: Uint8Array) =>
      Array.from({ length: HEIGHT }, (_, y) => data[y * WIDTH + 100]! / byte(90)).reduce(
        (sum, value) => sum + value,
        0,
      );
    const { straw: full } = await marked([stroke({ tintPercent: 90 })], {});
    expect(across(full!)).toBeCloseTo(20, 0);
    const light = stroke({
      tintPercent: 90,
      points: [
        [4, 5, 0.5],
        [16, 5, 0.5],
      ],
    });
    expect(across((await marked([light], {})).straw!)).toBeCloseTo(20 * 0.56, 0);
  });

  it.each(['dry', 'stipple'])('with a %s edge cover less, and reach no farther', async (edge) => {
    const sum = (data: Uint8Array) => data.reduce((so, value) => so + value, 0);
    const { straw: clean } = await marked([stroke({ tintPercent: 100 })], {});
    const { straw: rough } = await marked([stroke({ tintPercent: 100, edge })], {});
    expect(sum(rough!)).toBeLessThan(0.85 * sum(clean!));
    expect(sum(rough!)).toBeGreaterThan(0.15 * sum(clean!));
    rough!.forEach((value, i) => {
      if (clean![i] === 0) expect(value).toBe(0);
    });
  });

  it('beside the sheet do nothing, and one of a single touch is a dot', async () => {
    const off = stroke({
      tintPercent: 100,
      points: [
        [-40, -40, 1],
        [-30, -30, 1],
      ],
    });
    expect(Math.max(...(await marked([off], {})).straw!)).toBe(0);
    const dot = stroke({ tintPercent: 100, points: [[10, 5, 1]] });
    const { straw } = await marked([dot], {});
    const area = straw!.reduce((sum, value) => sum + value / 255, 0);
    expect(area).toBeCloseTo(Math.PI * 100, -1);
  });

  it('that name a plate which is gone are told of', async () => {
    const job = jobWith('hand-marks', { marks: [stroke({ plates: ['gone'] })] }, { straw: 50 });
    const { complaints } = await bench.evaluate(job, 'own.plates', 'plates');
    expect(complaints.map(({ code }) => code)).toContain('mark-plate-missing');
  });

  it('of a million points are refused in one sentence', async () => {
    const points = Array.from({ length: 5000 }, (_, i) => [i % 20, 5, 1]);
    const marks = Array.from({ length: 200 }, (_, i) => stroke({ id: `m${i}`, points }));
    const job = jobWith('hand-marks', { marks }, {});
    await expect(bench.value(job, 'own.plates', 'plates')).rejects.toThrow(/500000 points/);
  });
});

describe('fades', () => {
  const faded = async (fade: Settings) => {
    const plain = jobWith('hand-marks', {}, {});
    const { ids } = await bench.value(plain, 'closed-regions.regions', 'regions');
    const fades = Object.fromEntries(ids.map((id) => [id, fade])) as NonNullable<
      Job['colourways'][0]['fades']
    >;
    const job = { ...plain, colourways: [{ ...plain.colourways[0]!, fades }] };
    const { plates } = await bench.value(job, 'fill-plates.plates', 'plates');
    return plates[0]!.coverage.data;
  };
  const ends = { from: { straw: 20 }, to: { straw: 80 } };

  it('run straight from one recipe to the other, and on beyond their ends', async () => {
    const data = await faded({
      shape: 'linear',
      ...ends,
      pathMm: [
        [5, 5],
        [15, 5],
      ],
    });
    const row = (x: number) => data[50 * WIDTH + x]!;
    expect([row(10), row(190)]).toEqual([byte(20), byte(80)]);
    expect(Math.abs(row(100) - byte(50))).toBeLessThanOrEqual(1);
    expect(data[10 * WIDTH + 100]).toBe(row(100));
  });

  it('run outwards', async () => {
    const data = await faded({
      shape: 'radial',
      ...ends,
      pathMm: [
        [10, 5],
        [14, 5],
      ],
    });
    expect(Math.abs(data[50 * WIDTH + 120]! - data[70 * WIDTH + 100]!)).toBeLessThanOrEqual(1);
    expect([data[50 * WIDTH + 190], data[5 * WIDTH + 5]]).toEqual([byte(80), byte(80)]);
  });

  it('run along a path round its corner', async () => {
    const data = await faded({
      shape: 'path',
      ...ends,
      pathMm: [
        [2, 2],
        [18, 2],
        [18, 8],
      ],
    });
    expect(data[20 * WIDTH + 20]).toBe(byte(20));
    expect(Math.abs(data[79 * WIDTH + 180]! - byte(80))).toBeLessThanOrEqual(1);
    expect(Math.abs(data[20 * WIDTH + 180]! - byte(20 + (60 * 16) / 22))).toBeLessThanOrEqual(1);
  });

  it('keep their steps: 20 to 40 % over 100 mm has no jump of more than one level', async () => {
    const data = await faded({
      shape: 'linear',
      from: { straw: 20 },
      to: { straw: 40 },
      pathMm: [
        [0, 5],
        [20, 5],
      ],
    });
    for (let x = 6; x < WIDTH; x++)
      expect(Math.abs(data[50 * WIDTH + x]! - data[50 * WIDTH + x - 1]!)).toBeLessThanOrEqual(1);
  });
});

describe('plate art', () => {
  const PICTURE =
    '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="10mm" viewBox="0 0 20 10"><path d="M0 0h10v10H0z"/></svg>';
  const laid = async (settings: Settings, recipe: Record<string, number>) => {
    const asset = bench.asset('art.svg', new TextEncoder().encode(PICTURE));
    const { plates } = await bench.value(
      jobWith('plate-art', { asset, ...settings }, recipe),
      'own.plates',
      'plates',
    );
    return Object.fromEntries(plates.map(({ id, coverage }) => [id, coverage.data]));
  };
  const LEFT = 50 * WIDTH + 50;
  const RIGHT = 50 * WIDTH + 150;

  it('is laid, set or cut on one plate', async () => {
    const lay = await laid({ plate: 'brick', strengthPercent: 60 }, { brick: 30, soot: 20 });
    expect([lay.brick![LEFT], lay.brick![RIGHT], lay.soot![LEFT]]).toEqual([byte(60), byte(30), byte(20)]);
    const set = await laid({ plate: 'brick', does: 'set' }, { brick: 30 });
    expect([set.brick![LEFT], set.brick![RIGHT]]).toEqual([255, 0]);
    const cut = await laid({ plate: 'brick', does: 'cut' }, { brick: 30 });
    expect([cut.brick![LEFT], cut.brick![RIGHT]]).toEqual([0, byte(30)]);
  });

  it('lies where and as large as it is told, and beside it the plate stays', async () => {
    const { straw } = await laid(
      { plate: 'straw', does: 'set', xMm: 10, yMm: 0, widthMm: 10 },
      { straw: 50 },
    );
    expect([
      straw![20 * WIDTH + 120],
      straw![20 * WIDTH + 180],
      straw![LEFT],
      straw![80 * WIDTH + 120],
    ]).toEqual([255, 0, byte(50), byte(50)]);
  });

  it('says what is missing', async () => {
    await expect(laid({ plate: 'gone' }, {})).rejects.toThrow(/there are straw, brick, soot/);
    await expect(laid({ asset: null }, {})).rejects.toThrow(/has no picture yet/);
  });

  it('keeps the plates as they are where it is bypassed', async () => {
    const job = withSettings(withBypassed(jobWith('plate-art', {}, { straw: 50 }), 'own'), {});
    const { plates } = await bench.value(job, 'key-line.plates', 'plates');
    expect(plates[0]!.coverage.data[LEFT]).toBe(byte(50));
  });
});
