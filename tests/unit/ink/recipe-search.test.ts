import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../src/graph/inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { type PrintModel, printModel } from '../../../src/ink/model.ts';
import { recipeSearch, type SearchRules, USUAL_RULES } from '../../../src/ink/recipe-search.ts';
import { inkOf, SHELF, WHITE_COATED, WHITE_UNCOATED } from './inks.ts';

const INKS = SHELF.slice(0, 3);
const threeInks = printModel({ paper: WHITE_UNCOATED, inks: INKS });

/** Every recipe of the rules by plain nested counting. */
function allRecipes(count: number, rules: SearchRules): number[][] {
  const tints = [0, 1];
  for (let percent = 100 * rules.least; percent <= 100 * rules.most + 1e-6; percent += 100 * rules.step)
    tints.push(Math.round(percent * 1000) / 100_000);
  let all: number[][] = [[]];
  for (let ink = 0; ink < count; ink++) all = all.flatMap((head) => tints.map((tint) => [...head, tint]));
  return all.filter(
    (recipe) =>
      recipe.filter((tint) => tint > 0).length <= rules.mostInks &&
      recipe.reduce((sum, tint) => sum + tint, 0) <= rules.mostTotal + 1e-9,
  );
}

const scoreOf = (recipe: readonly number[], distance: number, penalty: number): number =>
  distance + penalty * Math.max(0, recipe.filter((tint) => tint > 0).length - 1);

const anyLab: fc.Arbitrary<Lab> = fc.tuple(
  fc.double({ min: 0, max: 110, noNaN: true }),
  fc.double({ min: -90, max: 90, noNaN: true }),
  fc.double({ min: -90, max: 90, noNaN: true }),
);

describe('the best recipe', () => {
  it.each([
    ['usual rules', USUAL_RULES],
    ['two inks at most, little ink in all', { ...USUAL_RULES, mostInks: 2, mostTotal: 1.1 }],
    ['no penalty', { ...USUAL_RULES, inkPenalty: 0, step: 0.2, least: 0.05, most: 0.95 }],
  ])('is the best of all, tried one by one: %s', (_, rules) => {
    const recipes = allRecipes(3, rules).map((tints) => ({ tints, lab: threeInks.labOf(tints) }));
    const find = recipeSearch(threeInks, rules);
    fc.assert(
      fc.property(anyLab, (wanted) => {
        const scores = recipes.map(({ tints, lab }) =>
          scoreOf(tints, differenceOf(wanted, lab), rules.inkPenalty),
        );
        const [{ tints, lab, distance }] = find(wanted) as [ReturnType<typeof find>[0]];
        expect(scoreOf(tints, distance, rules.inkPenalty)).toBeLessThan(Math.min(...scores) + 2e-6);
        expect(recipes.some((recipe) => recipe.tints.every((tint, i) => tint === tints[i]))).toBe(true);
        expect(lab).toEqual(threeInks.labOf(tints));
        expect(distance).toBe(differenceOf(wanted, lab));
      }),
      { numRuns: 60 },
    );
  });

  it('is found again for every colour on the lattice, but for what fewer inks reach as well', () => {
    const find = recipeSearch(threeInks, { ...USUAL_RULES, inkPenalty: 0 });
    for (const tints of allRecipes(3, USUAL_RULES)) {
      expect(find(threeInks.labOf(tints))[0]!.distance).toBeLessThan(1e-9);
    }
  });

  it('is paper alone where paper is wanted, in a print of one ink too', () => {
    expect(recipeSearch(threeInks, USUAL_RULES)(WHITE_UNCOATED.lab)[0]!.tints).toEqual([0, 0, 0]);
    const oneInk = printModel({ paper: WHITE_COATED, inks: [SHELF[2]!] });
    expect(recipeSearch(oneInk, USUAL_RULES)(WHITE_COATED.lab)[0]!.tints).toEqual([0]);
  });

  it('has tints one would type: 0, 15 to 85 by 10, 100', () => {
    const find = recipeSearch(printModel({ paper: WHITE_COATED, inks: [SHELF[2]!] }), USUAL_RULES);
    const found = new Set<number>();
    for (let l = 20; l <= 96; l += 0.5)
      found.add(find([l, (30 * (95 - l)) / 64, (-17 * (95 - l)) / 64])[0]!.tints[0]!);
    expect([...found].sort()).toEqual([0, 0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 1]);
  });

  it('takes a further ink only where it saves the penalty', () => {
    const wanted = threeInks.labOf([0.55, 0.25, 0]);
    const inks = (inkPenalty: number) =>
      recipeSearch(threeInks, { ...USUAL_RULES, inkPenalty })(wanted)[0]!.tints.filter((tint) => tint > 0)
        .length;
    expect(inks(0.5)).toBe(2);
    expect(inks(50)).toBe(1);
  });

  it('of equals has fewer inks, then the lower total, then more on the plate that prints first', () => {
    /** Every recipe of one total has one colour, and a quarter on a second plate counts for nothing. */
    const flat: PrintModel = {
      ...threeInks,
      labOf: (tints) => [90 - 40 * Math.min(1, tints[0]! + tints[1]! + tints[2]!), 0, 0],
    };
    const rules = { ...USUAL_RULES, step: 0.25, least: 0.25, most: 0.75, inkPenalty: 0 };
    const find = recipeSearch(flat, rules);
    expect(find([70, 0, 0])[0]!.tints).toEqual([0.5, 0, 0]);
    expect(find([70, 0, 0], 6).map(({ tints }) => tints)).toEqual([
      [0.5, 0, 0],
      [0, 0.5, 0],
      [0, 0, 0.5],
      [0.25, 0.25, 0],
      [0.25, 0, 0.25],
      [0, 0.25, 0.25],
      [0.25, 0.25, 0.25],
    ]);
    expect(find([50, 0, 0])[0]!.tints).toEqual([1, 0, 0]);
  });
});

describe('alternatives', () => {
  const find = recipeSearch(threeInks, USUAL_RULES);

  it('each print in another set of plates, the best of each set, in order', () => {
    const wanted: Lab = [52, 12, 14];
    const found = find(wanted, 7);
    const sets = found.map(({ tints }) => tints.map((tint) => (tint > 0 ? 1 : 0)).join(''));
    expect(new Set(sets).size).toBe(8);
    const scores = found.map(({ tints, distance }) => scoreOf(tints, distance, USUAL_RULES.inkPenalty));
    expect(scores).toEqual(scores.toSorted((a, b) => a - b));
    for (const [i, set] of sets.entries()) {
      const rivals = allRecipes(3, USUAL_RULES).filter(
        (recipe) => recipe.map((tint) => (tint > 0 ? 1 : 0)).join('') === set,
      );
      const best = Math.min(...rivals.map((recipe) => differenceOf(wanted, threeInks.labOf(recipe))));
      expect(found[i]!.distance).toBeCloseTo(best, 5);
    }
  });

  it('begin with what is found without them, and are as many as asked for at most', () => {
    const wanted: Lab = [40, 5, -8];
    expect(find(wanted, 2)).toHaveLength(3);
    expect(find(wanted, 2)[0]).toEqual(find(wanted)[0]);
    expect(find(wanted, 2)).toEqual(find(wanted, 7).slice(0, 3));
    expect(find(wanted, 50)).toHaveLength(8);
  });
});

describe('many plates', () => {
  const twelve = Array.from({ length: 12 }, (_, i) => inkOf(i, [40 + 4 * i, 30 - 5 * i, 5 * i - 20]));
  const model = printModel({ paper: WHITE_COATED, inks: twelve });

  it('are searched in all sets of two', () => {
    const find = recipeSearch(model, { ...USUAL_RULES, mostInks: 2 });
    const tints = twelve.map((_, i) => (i === 3 || i === 10 ? 0.45 : 0));
    expect(find(model.labOf(tints))[0]!.distance).toBeLessThan(0.5);
    expect(find([50, 0, 0], 3)).toHaveLength(4);
  });

  it('are refused with what to change where the rules allow over a million recipes', () => {
    expect(() => recipeSearch(model, { ...USUAL_RULES, mostInks: 4 })).toThrow(
      /allow 3\d{6} recipes, at most 1000000 can be searched; take a larger step or fewer inks on a spot/,
    );
  });
});

describe('rules that contradict themselves', () => {
  it.each([
    [{ step: 0 }, 'the step between tints is 0.01 to 1, not 0'],
    [{ least: 0.9 }, 'tints from 0.9 to 0.85 are no range within 0..1'],
    [{ least: 0 }, 'tints from 0 to 0.85 are no range'],
    [{ most: 1.1 }, 'tints from 0.15 to 1.1 are no range'],
  ])('%j are refused', (more, message) => {
    expect(() => recipeSearch(threeInks, { ...USUAL_RULES, ...more })).toThrow(message);
  });
});
