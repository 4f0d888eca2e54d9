import { describe, expect, it } from 'vitest';
import type { GraphNode, Job } from '../../../src/graph/job.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { printModel } from '../../../src/ink/model.ts';
import { printOf } from '../../../src/nodes/print.ts';
import { type SwapInksInput, swapInks } from '../../../workers/tasks/swap-inks.ts';
import type { TaskContext } from '../../../workers/tasks/task.ts';
import { defaultJob, withSettings } from '../support/jobs.ts';

const NO_ENGINE = {} as TaskContext;

const swap = (input: SwapInksInput) => swapInks(input, NO_ENGINE);

const OTHERS: GraphNode['settings'] = {
  inks: [
    { id: 'rhubarb', name: 'Rhubarb', lab: [64, 46, 17], opacity: 0.005 },
    { id: 'privet', name: 'Privet', lab: [48, -24, 30], opacity: 0.01 },
  ],
  plates: [
    { id: 'rhubarb', ink: 'rhubarb', pass: 1 },
    { id: 'privet', ink: 'privet', pass: 2 },
  ],
};

const job = ((): Job => {
  const plain = defaultJob({});
  const recipes = { r1: { straw: 40 }, r2: { brick: 100, straw: 70 }, r3: {} };
  return { ...plain, colourways: [{ id: 'a', name: 'A', recipes, others: { brick: 15 } }] };
})();

const colourOf = (of: Job, recipe: Record<string, number>) => {
  const { plates, input } = printOf(of.graph.nodes)!;
  return printModel(input).labOf(plates.map((plate) => (recipe[plate] ?? 0) / 100));
};

describe('inks swapped', () => {
  it('give recipes of the new plates only, and bare paper stays bare', async () => {
    const swapped = await swap({ job, set: OTHERS, recipes: 'alike' });
    const [colourway] = swapped.colourways;
    for (const recipe of [...Object.values(colourway!.recipes), colourway!.others])
      for (const plate of Object.keys(recipe)) expect(['rhubarb', 'privet']).toContain(plate);
    expect(colourway!.recipes.r3).toEqual({});
    expect(Object.keys(colourway!.recipes)).toEqual(['r1', 'r2', 'r3']);
  });

  it('look as near as the new inks can: no other recipe of theirs on the same steps comes nearer', async () => {
    const swapped = await swap({ job, set: OTHERS, recipes: 'alike' });
    const wanted = colourOf(job, job.colourways[0]!.recipes.r1!);
    const got = differenceOf(wanted, colourOf(swapped, swapped.colourways[0]!.recipes.r1!));
    for (const rhubarb of [15, 25, 35, 45, 55, 65, 75, 85, 100])
      expect(got).toBeLessThanOrEqual(differenceOf(wanted, colourOf(swapped, { rhubarb })) + 0.51);
  });

  it('leave recipes as they look when the inks are the same', async () => {
    const same = job.graph.nodes.find(({ kind }) => kind === 'ink-set')!.settings;
    const swapped = await swap({ job, set: same, recipes: 'alike' });
    expect(swapped.colourways[0]!.recipes.r2).toEqual({ brick: 100, straw: 75 });
  });

  it('keep tints by place where that is asked for, and settings by plate go along', async () => {
    const byPlate = withSettings(job, { 'key-line': { tints: { straw: 50 } } });
    const swapped = await swap({ job: byPlate, set: OTHERS, recipes: 'tints' });
    expect(swapped.colourways[0]!.recipes.r1).toEqual({ rhubarb: 40 });
    expect(swapped.colourways[0]!.recipes.r2).toEqual({ rhubarb: 70, privet: 100 });
    const keyLine = swapped.graph.nodes.find(({ kind }) => kind === 'key-line')!;
    expect(keyLine.settings.tints).toEqual({ rhubarb: 50 });
  });

  it('are refused in one sentence where the set cannot print', async () => {
    const bad = { ...OTHERS, plates: [] };
    await expect(swap({ job, set: bad, recipes: 'alike' })).rejects.toThrow(/ink set cannot be read/);
  });
});
