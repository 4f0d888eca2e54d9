import { expect, test } from 'vitest';
import { newJob } from '../../../src/graph/default-graph.ts';
import type { Job } from '../../../src/graph/job.ts';
import type { Colourway } from '../../../src/graph/recipe.ts';
import { recipeKey, recipesInUse } from '../../../src/store/recipe-list.ts';

function jobWith(colourway: Partial<Colourway>, regions: string[]): Job {
  const job = newJob('Beet', { nodes: [], wires: [] }, {});
  const entry = {
    anchorMm: [0, 0] as [number, number],
    areaMm2: 1,
    boxMm: [0, 0, 1, 1] as [number, number, number, number],
  };
  return {
    ...job,
    colourways: [{ ...job.colourways[0]!, ...colourway }],
    register: { ...job.register, regions: regions.map((id) => ({ id, ...entry })) },
  };
}

test('the recipe of most regions comes first, then the one first used', () => {
  const recipes = { a: { teal: 30 }, b: { rust: 80 }, c: { rust: 80 }, d: { teal: 100 } };
  const job = jobWith({ recipes }, ['a', 'b', 'c', 'd']);
  expect(recipesInUse(job)).toEqual([{ rust: 80 }, { teal: 30 }, { teal: 100 }]);
});

test('regions without a recipe of their own count for that of all others, and regions that are gone for none', () => {
  const job = jobWith({ recipes: { a: { teal: 30 }, gone: { rust: 5 } }, others: { rust: 80 } }, ['a', 'b']);
  expect(recipesInUse(job)).toEqual([{ teal: 30 }, { rust: 80 }]);
});

test('before any region was found, those of the colourway count', () => {
  expect(recipesInUse(jobWith({ recipes: { a: { teal: 30 } } }, []))).toEqual([{ teal: 30 }]);
});

test('recipes that print the same are one', () => {
  expect(recipeKey({ teal: 30, rust: 0 })).toBe(recipeKey({ teal: 30 }));
  expect(recipeKey({ teal: 30, rust: 10 })).toBe(recipeKey({ rust: 10, teal: 30 }));
  expect(recipeKey({})).toBe('');
  const job = jobWith({ recipes: { a: { teal: 30 }, b: { rust: 0, teal: 30 } } }, ['a', 'b']);
  expect(recipesInUse(job)).toHaveLength(1);
});
