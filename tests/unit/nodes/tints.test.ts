import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, THREE_INKS, withRecipes } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

let bench: Bench;
let asset: string;
beforeAll(() => {
  bench = new Bench();
  asset = bench.drawing(drawnPlane(90, 60, (x) => (x === 30 || x === 60 ? 255 : 0)));
});
afterAll(() => bench.close());

const job = () => defaultJob({ asset, ppi: 200 });

describe('region tints', () => {
  it('are the recipe of each region, and what all others print where it has none', async () => {
    const tinted = withRecipes(job(), { r2: { straw: 40, soot: 15 }, r3: {} }, { brick: 20 });
    const { recipes } = await bench.value(tinted, 'region-tints.recipes', 'recipes');
    expect(recipes).toEqual([{ brick: 20 }, { straw: 40, soot: 15 }, {}]);
  });

  it('leave out plates that the ink set does not have, and say which', async () => {
    const tinted = withRecipes(job(), { r1: { straw: 40, gold: 10 } }, { silver: 5 });
    const { value, complaints } = await bench.evaluate(tinted, 'region-tints.recipes', 'recipes');
    expect(value.recipes).toEqual([{ straw: 40 }, {}, {}]);
    const missing = complaints.filter(({ code }) => code === 'recipe-plate-missing');
    expect(missing).toHaveLength(1);
    expect(missing[0]!.message).toMatch(/(?=.*gold)(?=.*silver)/);
  });

  it('follow the colourway in use', async () => {
    const two: Job = {
      ...job(),
      colourways: [
        { id: 'day', name: 'Day', recipes: {}, others: { straw: 100 } },
        { id: 'dusk', name: 'Dusk', recipes: {}, others: { soot: 50 } },
      ],
    };
    const others = async (colourway: string) =>
      (await bench.value({ ...two, colourway }, 'region-tints.recipes', 'recipes')).recipes[0];
    expect(await others('day')).toEqual({ straw: 100 });
    expect(await others('dusk')).toEqual({ soot: 50 });
  });
});

describe('filled plates', () => {
  it('are one for each place in the print order, with its ink and its pass', async () => {
    const { plates, ppi } = await bench.value(job(), 'fill-plates.plates', 'plates');
    expect(plates.map(({ id, ink, order, pass }) => [id, ink.id, order, pass])).toEqual([
      ['straw', 'straw', 1, 1],
      ['brick', 'brick', 2, 2],
      ['soot', 'soot', 3, 3],
    ]);
    expect(ppi).toBe(200);
  });

  it('may be two of one ink', async () => {
    const plates = [
      { id: 'under', ink: 'straw', pass: 1 },
      { id: 'over', ink: 'straw', pass: 1 },
    ];
    const twice = withRecipes(defaultJob({ asset, ppi: 200 }, { ...THREE_INKS, plates }), {}, { over: 60 });
    const value = await bench.value(twice, 'fill-plates.plates', 'plates');
    expect(value.plates.map(({ coverage }) => coverage.data[0])).toEqual([0, 153]);
  });
});

describe('an ink set is refused', () => {
  const refusal = (inks: Settings) =>
    bench.value(defaultJob({}, { ...THREE_INKS, ...inks }), 'ink-set.inks', 'inks');

  it('when a plate prints in an ink it does not hold', async () => {
    await expect(refusal({ plates: [{ id: 'gold', ink: 'gold', pass: 1 }] })).rejects.toThrow(
      /plate "gold".*"gold".*straw, brick, soot/,
    );
  });

  it('when two plates have one id', async () => {
    const plate = { id: 'straw', ink: 'straw', pass: 1 };
    await expect(refusal({ plates: [plate, plate] })).rejects.toThrow(/two plates are called "straw"/);
  });

  it('when two inks have one id', async () => {
    const ink = { id: 'straw', name: 'Straw', hex: '#eedd88' };
    const plates = [{ id: 'straw', ink: 'straw', pass: 1 }];
    await expect(refusal({ inks: [ink, { ...ink, hex: '#222222' }], plates })).rejects.toThrow(/"straw"/);
  });

  it('when passes fall along the print order', async () => {
    const plates = [
      { id: 'straw', ink: 'straw', pass: 2 },
      { id: 'soot', ink: 'soot', pass: 1 },
    ];
    await expect(refusal({ plates })).rejects.toThrow(/passes/);
  });
});
