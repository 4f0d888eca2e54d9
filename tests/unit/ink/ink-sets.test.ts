import { describe, expect, it } from 'vitest';
import type { Ink, Lab } from '../../../src/graph/inks.ts';
import { DEMO_INKS } from '../../../src/ink/demo-inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { findInkSets, type InkSetsInput, inPrintOrder, rankInkSets } from '../../../src/ink/ink-sets.ts';
import { printModel } from '../../../src/ink/model.ts';
import { recipeSearch, USUAL_RULES } from '../../../src/ink/recipe-search.ts';
import { inkOf, WHITE_UNCOATED } from './inks.ts';

const SIX = DEMO_INKS.slice(0, 6);
const idsOf = (inks: readonly Ink[]): string[] => inks.map(({ id }) => id);
const WANTED: InkSetsInput['wanted'] = [
  { lab: [60, 30, 30], weight: 1 },
  { lab: [45, -20, 2], weight: 4 },
  { lab: [80, 5, 35], weight: 2 },
  { lab: [35, 18, -8], weight: 1 },
];
const input = (more: Partial<InkSetsInput> = {}): InkSetsInput => ({
  shelf: SIX,
  paper: WHITE_UNCOATED,
  printing: {},
  wanted: WANTED,
  count: 3,
  rules: USUAL_RULES,
  most: 100,
  ...more,
});

describe('sets of inks', () => {
  it('are all sets there are, ranked by what each reaches by itself', () => {
    const { sets, tried, everySet } = rankInkSets(input());
    expect([sets.length, tried, everySet]).toEqual([20, 20, true]);
    expect(new Set(sets.map(({ inks }) => inks.toSorted().join())).size).toBe(20);
    const means = sets.map(({ mean }) => mean);
    expect(means).toEqual(means.toSorted((a, b) => a - b));
    for (const { inks, mean, worst, colours } of [sets[0]!, sets[19]!]) {
      const set = inks.map((id) => SIX.find((ink) => ink.id === id)!);
      const find = recipeSearch(printModel({ paper: WHITE_UNCOATED, inks: set }), USUAL_RULES);
      const distances = WANTED.map(({ lab }) => find(lab)[0]!.distance);
      expect(worst).toBe(Math.max(...distances));
      const weighted = distances.reduce((sum, distance, i) => sum + distance * WANTED[i]!.weight, 0) / 8;
      expect(mean).toBeCloseTo(weighted, 12);
      expect(colours.map(({ distance }) => distance)).toEqual(distances);
    }
  });

  it('say which recipe reaches each colour, in % by ink, and its Lab', () => {
    const { colours, inks } = rankInkSets(input()).sets[0]!;
    const model = printModel({
      paper: WHITE_UNCOATED,
      inks: inks.map((id) => SIX.find((ink) => ink.id === id)!),
    });
    for (const { wanted, recipe, lab, distance } of colours) {
      expect(model.labOf(inks.map((id) => (recipe[id] ?? 0) / 100))).toEqual(lab);
      expect(Object.values(recipe).every((percent) => percent > 0)).toBe(true);
      expect(distance).toBe(differenceOf(wanted, lab));
    }
  });

  it('are found for the solids of any two and any four inks', () => {
    for (const some of [
      [1, 3],
      [0, 2, 4, 5],
    ]) {
      const wanted = some.map((i) => ({ lab: SIX[i]!.lab as Lab, weight: 1 }));
      const [best] = rankInkSets(input({ wanted, count: some.length, most: 1 })).sets;
      expect(best!.inks.toSorted()).toEqual(some.map((i) => SIX[i]!.id).toSorted());
      expect(best!.mean).toBeLessThan(0.01);
    }
  });

  it('count a colour by its weight', () => {
    const heavy = (at: number) =>
      rankInkSets(input({ wanted: WANTED.map((each, i) => ({ ...each, weight: i === at ? 1e6 : 1 })) }))
        .sets[0]!;
    for (const at of [0, 3]) {
      const alone = rankInkSets(input({ wanted: [WANTED[at]!] })).sets[0]!;
      expect(heavy(at).colours[at]!.distance).toBeCloseTo(alone.mean, 3);
    }
  });

  it('hold the inks to keep', () => {
    const { sets, tried } = rankInkSets(input({ keep: ['privet', 'damson'] }));
    expect([sets.length, tried]).toEqual([4, 4]);
    for (const { inks } of sets) expect(inks).toEqual(expect.arrayContaining(['privet', 'damson']));
    expect(rankInkSets(input({ keep: ['privet', 'damson', 'pantile'] })).sets).toHaveLength(1);
  });

  it('are returned up to as many as asked for, the same ones', () => {
    expect(rankInkSets(input({ most: 3 })).sets).toEqual(rankInkSets(input()).sets.slice(0, 3));
  });

  it('count as alike while their means differ by less than 3 times the root of 2 over the colours', () => {
    const even = WANTED.map(({ lab }) => ({ lab, weight: 2 }));
    const { sets } = rankInkSets(input({ wanted: even }));
    const limit = sets[0]!.mean + 3 * Math.sqrt(2 / 4);
    expect(sets.map(({ withinError }) => withinError)).toEqual(sets.map(({ mean }) => mean < limit));
    expect(sets.some(({ withinError }) => !withinError)).toBe(true);
    expect(sets.filter(({ withinError }) => withinError).length).toBeGreaterThan(1);
  });

  it('leave readings of other inks aside and use those of their own', () => {
    const reading = { inks: ['pantile', 'water-butt'], lab: [60, 30, 30] as Lab };
    const wanted = [{ lab: reading.lab, weight: 1 }];
    const { sets } = rankInkSets(input({ wanted, printing: { measured: [reading] }, count: 2 }));
    expect(sets[0]!.inks).toEqual(['pantile', 'water-butt']);
    expect(sets[0]!.colours[0]!.recipe).toEqual({ pantile: 100, 'water-butt': 100 });
  });
});

describe('the order of a set', () => {
  it('is what hides first, then light before dark', () => {
    const white = inkOf('white', [94, 0, 0], { opacity: 0.8 });
    const cover = inkOf('cover', [40, 0, 0], { opacity: 0.9 });
    const inks = [inkOf('dark', [30, 0, 0]), cover, inkOf('light', [80, 0, 0]), white];
    expect(idsOf(inPrintOrder(inks))).toEqual(['ink-white', 'ink-cover', 'ink-light', 'ink-dark']);
  });
});

describe('more sets than can be tried', () => {
  /** 60 inks round the colour circle, the wanted solids among them. */
  const many = Array.from({ length: 60 }, (_, i) =>
    inkOf(i, [30 + (i % 60), 45 * Math.cos(i), 45 * Math.sin(i)]),
  );
  const some = [17, 23, 41];
  const wanted = some.map((i) => ({ lab: many[i]!.lab as Lab, weight: 1 }));
  const rules = { ...USUAL_RULES, step: 0.85, least: 0.15, most: 0.15, mostInks: 1 };

  it('grow ink by ink, which is said, and reach the solids all the same', () => {
    const { sets, tried, everySet } = rankInkSets(input({ shelf: many, wanted, rules, most: 3 }));
    expect(everySet).toBe(false);
    expect(tried).toBeLessThanOrEqual(60 * 13);
    expect(sets[0]!.inks.toSorted()).toEqual(some.map((i) => `ink-${i}`).toSorted());
  });

  it('grow from the inks to keep', () => {
    const search = findInkSets(input({ shelf: many, wanted, rules, count: 4, keep: ['ink-9'], most: 1 }));
    expect(search.next().value).toEqual({ done: 0, of: 59 * 13 });
  });
});

describe('what cannot be searched is refused with what to change', () => {
  it.each<[string, Partial<InkSetsInput>]>([
    ['no colours are wanted; give at least one', { wanted: [] }],
    ['the weight of a wanted colour is above 0', { wanted: [{ lab: [50, 0, 0], weight: 0 }] }],
    ['a set has 1 to 6 inks, not 7', { count: 7 }],
    ['a set has 1 to 6 inks, not 2.5', { count: 2.5 }],
    ['ask for at least one set, not 0', { most: 0 }],
    ['the shelf has 2 inks, too few for sets of 3; ask for fewer', { shelf: SIX.slice(0, 2) }],
    ['two inks of the shelf are called pantile; give one another id', { shelf: [...SIX, SIX[1]!] }],
    ['there is no ink tin on the shelf to keep', { keep: ['tin'] }],
    [
      '3 inks are to be kept in a set of 2; keep fewer',
      { count: 2, keep: ['pantile', 'damson', 'privet', 'privet'] },
    ],
  ])('%s', (message, more) => {
    expect(() => rankInkSets(input(more))).toThrow(new RangeError(message));
  });
});
