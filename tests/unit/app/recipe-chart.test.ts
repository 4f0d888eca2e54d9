import { describe, expect, it } from 'vitest';
import { byHue, familyOf } from '../../../src/app/chart/by-hue.ts';
import { chartStrips } from '../../../src/app/chart/chart-recipes.ts';
import type { Recipe } from '../../../src/graph/recipe.ts';
import { recipeKey } from '../../../src/store/recipe-list.ts';

describe('strips of the recipe chart', () => {
  it('hold every plate, pair and triple of three plates once', () => {
    const names = chartStrips(['a', 'b', 'c'], null).map(({ plates }) => plates.join(''));
    expect(names).toEqual(['a', 'b', 'c', 'ab', 'ac', 'bc', 'abc']);
  });

  it('hold all full overprints', () => {
    const keys = new Set(
      chartStrips(['a', 'b', 'c'], null).flatMap(({ rows }) => rows.flat().map(recipeKey)),
    );
    const all: Recipe[] = [{ a: 100 }, { a: 100, b: 100 }, { b: 100, c: 100 }, { a: 100, b: 100, c: 100 }];
    for (const full of all) expect(keys).toContain(recipeKey(full));
  });

  it('hold only tints that a press holds, each in every plate of its strip', () => {
    for (const { plates, rows } of chartStrips(['a', 'b', 'c', 'd'], null))
      for (const recipe of rows.flat()) {
        expect(Object.keys(recipe)).toEqual(plates);
        for (const tint of Object.values(recipe)) {
          expect(tint).toBeGreaterThanOrEqual(15);
          expect(tint % 5).toBe(0);
        }
      }
  });

  it('offer only mixes with the chosen plate beyond five plates', () => {
    const six = ['a', 'b', 'c', 'd', 'e', 'f'];
    const mixed = chartStrips(six, 'd').filter(({ plates }) => plates.length > 1);
    expect(mixed).toHaveLength(5 + 10);
    expect(mixed.every(({ plates }) => plates.includes('d'))).toBe(true);
  });
});

describe('recipes by hue', () => {
  it('name the family of a colour', () => {
    expect(familyOf([60, 50, 30])).toBe('reds');
    expect(familyOf([80, 0, 60])).toBe('yellows');
    expect(familyOf([50, -40, 0])).toBe('seaGreens');
    expect(familyOf([50, 40, -2])).toBe('pinks');
    expect(familyOf([50, 2, 3])).toBe('greys');
  });

  it('come once, from light to dark, greys last', () => {
    const labs = { a: [30, 50, 30], b: [70, 50, 30], c: [50, 0, 0] } as const;
    const recipes: Recipe[] = [{ a: 100 }, { c: 100 }, { b: 100 }, { a: 100 }];
    const groups = byHue(recipes, (recipe) => [...labs[Object.keys(recipe)[0] as 'a']]);
    expect(groups).toEqual([
      { family: 'reds', recipes: [{ b: 100 }, { a: 100 }] },
      { family: 'greys', recipes: [{ c: 100 }] },
    ]);
  });
});
