import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../src/graph/inks.ts';
import {
  type PaletteEntry,
  type ProposalRules,
  proposalRulesSchema,
} from '../../../src/graph/proposal-rules.ts';
import type { Recipe } from '../../../src/graph/recipe.ts';
import { chanceFrom } from '../../../src/ink/colourways/chance.ts';
import { classesOf, type PlacedRegion } from '../../../src/ink/colourways/classes.ts';
import { type ProposalInput, propose } from '../../../src/ink/colourways/propose.ts';
import { differenceOf } from '../../../src/ink/difference.ts';

/** A board of squares of 10 mm, each beside four others; `r<row>-<column>`. */
function board(rows: number, columns: number): PlacedRegion[] {
  const id = (row: number, column: number) => `r${row}-${column}`;
  const there = (row: number, column: number) => row >= 0 && row < rows && column >= 0 && column < columns;
  return Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const beside = [
      [row - 1, column],
      [row + 1, column],
      [row, column - 1],
      [row, column + 1],
    ] as const;
    return {
      id: id(row, column),
      areaMm2: 100,
      boxMm: [column * 10, row * 10, column * 10 + 10, row * 10 + 10] as const,
      touchesFrame: row === 0 || column === 0 || row === rows - 1 || column === columns - 1,
      neighbours: beside.filter(([r, c]) => there(r, c)).map(([r, c]) => ({ id: id(r, c), sharedMm: 10 })),
      inside: null,
      now: '',
    };
  });
}

const LABS: Record<string, Lab> = { a: [90, 0, 0], b: [60, 40, 30], c: [40, -30, 10], d: [61, 41, 30] };
const labOf = (recipe: Recipe): Lab => LABS[Object.keys(recipe)[0]!]!;
const rulesOf = (rules: Partial<ProposalRules> = {}): ProposalRules =>
  proposalRulesSchema.parse({
    palette: [{ recipe: { a: 100 } }, { recipe: { b: 100 } }, { recipe: { c: 100 } }],
    likeSized: false,
    ...rules,
  });
const input = (more: Partial<ProposalInput> = {}): ProposalInput => ({
  regions: board(6, 8),
  rules: rulesOf(),
  groups: [],
  pinned: {},
  labOf,
  count: 3,
  seed: 1,
  ...more,
});

describe('proposed colourways', () => {
  it('colour every region so that neighbours differ, as maps can be', () => {
    for (const { recipes, kept } of propose(input())) {
      expect(Object.keys(recipes)).toHaveLength(48);
      expect(kept.contrast).toBe(1);
      for (const { id, neighbours } of board(6, 8))
        for (const neighbour of neighbours)
          expect(differenceOf(labOf(recipes[id]!), labOf(recipes[neighbour.id]!))).toBeGreaterThanOrEqual(8);
    }
  });

  it('differ clearly from one another', () => {
    const found = propose(input({ count: 6 }));
    expect(found).toHaveLength(6);
    for (const { different } of found) expect(different).toBeGreaterThanOrEqual(0.15);
  });

  it('are the same for the same seed and others for another', () => {
    expect(propose(input())).toEqual(propose(input()));
    expect(propose(input({ seed: 2 }))[0]!.recipes).not.toEqual(propose(input())[0]!.recipes);
  });

  it('come near the shares that were asked for', () => {
    const palette: PaletteEntry[] = [
      { recipe: { a: 100 }, sharePercent: 50 },
      { recipe: { b: 100 }, sharePercent: 25 },
      { recipe: { c: 100 }, sharePercent: 25 },
    ];
    for (const { kept } of propose(input({ rules: rulesOf({ palette }) })))
      expect(kept.shareErrorPercent).toBeLessThanOrEqual(9);
  });

  it('leave pinned regions as they print', () => {
    const pinned = { 'r2-3': { d: 40 }, 'r0-0': { b: 100 } };
    for (const { recipes } of propose(input({ pinned }))) {
      expect(recipes['r2-3']).toEqual({ d: 40 });
      expect(recipes['r0-0']).toEqual({ b: 100 });
      expect(recipes['r0-1']).not.toEqual({ b: 100 });
    }
  });

  it('print one recipe where the frame is touched, when that is asked', () => {
    const rules = rulesOf({ frame: 2, contrast: 0 });
    for (const { recipes, kept } of propose(input({ rules, count: 1 }))) {
      expect(kept.frame).toBe(1);
      for (const { id, touchesFrame } of board(6, 8))
        if (touchesFrame) expect(recipes[id]).toEqual({ c: 100 });
    }
  });

  it('keep a cap on ink where the palette allows it', () => {
    const palette: PaletteEntry[] = [{ recipe: { a: 10 } }, { recipe: { b: 100, c: 100 } }];
    for (const { kept } of propose(input({ rules: rulesOf({ palette, totalPercent: 60 }) })))
      expect(kept.totalPercent).toBeLessThanOrEqual(64);
  });

  it('tell what they could not keep', () => {
    const palette: PaletteEntry[] = [{ recipe: { b: 100 } }, { recipe: { d: 100 } }];
    const [found] = propose(input({ rules: rulesOf({ palette }), count: 1 }));
    expect(found!.kept.contrast).toBe(0);
    expect(found!.kept.nearest!.distance).toBeLessThan(8);
  });

  it('are fewer than asked for where the rules leave one way only', () => {
    const rules = rulesOf({ palette: [{ recipe: { a: 100 } }] });
    expect(propose(input({ rules, count: 5 }))).toHaveLength(1);
  });

  it('are refused for a drawing without regions', () => {
    expect(() => propose(input({ regions: [] }))).toThrow(/no regions/);
  });
});

describe('regions that print alike', () => {
  const petals = (areas: readonly number[]): PlacedRegion[] =>
    areas.map((area, i) => ({
      id: `p${i}`,
      areaMm2: area,
      boxMm: [i * 20, 0, i * 20 + area / 10, 10] as const,
      touchesFrame: false,
      neighbours: [],
      inside: i < 2 ? 'pot' : null,
      now: i === 1 ? 'dark' : 'light',
    }));
  const members = (found: ReturnType<typeof classesOf>) => found.classes.map(({ regions }) => regions);
  const off = { asNow: false, likeSized: false, likePlaced: false, groups: false };

  it('are those of about one size and shape', () => {
    const found = classesOf(petals([100, 104, 200]), { ...off, likeSized: true }, [], new Set());
    expect(members(found)).toEqual([['p0', 'p1'], ['p2']]);
  });

  it('are those that print alike now, even side by side', () => {
    const found = classesOf(petals([100, 300, 200]), { ...off, asNow: true }, [], new Set());
    expect(members(found)).toEqual([['p0', 'p2'], ['p1']]);
    const squares = board(1, 3).map((region, i) => ({ ...region, now: i < 2 ? 'a' : 'b' }));
    expect(members(classesOf(squares, { ...off, asNow: true }, [], new Set()))).toEqual([
      ['r0-0', 'r0-1'],
      ['r0-2'],
    ]);
  });

  it('are not one where everything prints alike', () => {
    const found = classesOf(board(2, 2), { ...off, asNow: true }, [], new Set());
    expect(found.classes).toHaveLength(4);
  });

  it('are those within one region', () => {
    const found = classesOf(petals([100, 300, 200]), { ...off, likePlaced: true }, [], new Set());
    expect(members(found)).toEqual([['p0', 'p1'], ['p2']]);
  });

  it('are those of one named group', () => {
    const groups = [{ regions: ['p0', 'p2', 'gone'] }];
    const found = classesOf(petals([100, 300, 200]), { ...off, groups: true }, groups, new Set());
    expect(members(found)).toEqual([['p0', 'p2'], ['p1']]);
  });

  it('are never neighbours, and never pinned', () => {
    const squares = board(1, 3);
    const found = classesOf(squares, { ...off, likeSized: true }, [], new Set(['r0-2']));
    expect(members(found)).toEqual([['r0-0'], ['r0-1'], ['r0-2']]);
  });
});

describe('chance', () => {
  it('spreads evenly and begins anew with its seed', () => {
    const chance = chanceFrom(5);
    const drawn = Array.from({ length: 10_000 }, chance);
    const mean = drawn.reduce((sum, value) => sum + value, 0) / drawn.length;
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.01);
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...drawn)).toBeLessThan(1);
    expect(Array.from({ length: 5 }, chanceFrom(5))).toEqual(drawn.slice(0, 5));
  });
});
