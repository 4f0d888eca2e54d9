import type { Recipe } from '../../graph/recipe.ts';

/** Recipes of one plate, or of two or three over one another, in rows of the same mixes ever paler. */
export interface ChartStrip {
  /** One to three plate ids. */
  plates: readonly string[];
  rows: readonly (readonly Recipe[])[];
}

const SINGLE = Array.from({ length: 18 }, (_, i) => 15 + 5 * i);
/** Parts of the first and the second, from all of one to all of the other. */
const PAIR = [
  [1, 0.2],
  [1, 0.35],
  [1, 0.5],
  [1, 0.75],
  [1, 1],
  [0.75, 1],
  [0.5, 1],
  [0.35, 1],
  [0.2, 1],
] as const;
/** Parts of three: each in turn leads. */
const TRIPLE = [
  [1, 0.35, 0.35],
  [1, 0.7, 0.35],
  [0.7, 1, 0.35],
  [0.35, 1, 0.35],
  [0.35, 1, 0.7],
  [1, 1, 1],
  [0.35, 0.7, 1],
  [0.35, 0.35, 1],
  [0.7, 0.35, 1],
] as const;
/** The strongest tint of a row, %. */
const ROWS = [100, 70, 45] as const;
/** The step of tints and the palest that a press holds, %. */
const STEP = 5;
const LEAST = 15;
/** Beyond so many plates only strips with the chosen one are offered. */
const MOST_FOR_ALL = 5;

/** A tint that the press holds. */
const tintOf = (value: number) => Math.max(LEAST, Math.round(value / STEP) * STEP);

function combinations(plates: readonly string[], size: number): string[][] {
  if (size === 0) return [[]];
  return plates.flatMap((plate, i) =>
    combinations(plates.slice(i + 1), size - 1).map((rest) => [plate, ...rest]),
  );
}

function mixes(plates: readonly string[], parts: readonly (readonly number[])[]): ChartStrip {
  const recipe = (shares: readonly number[], most: number): Recipe =>
    Object.fromEntries(plates.map((plate, i) => [plate, tintOf(shares[i]! * most)]));
  return { plates, rows: ROWS.map((most) => parts.map((shares) => recipe(shares, most))) };
}

/**
 * All overprints of a set of plates with their tint steps: a strip for every plate, pair and triple.
 *
 * @param plates in print order
 * @param chosen the plate whose mixes are offered when there are too many
 */
export function chartStrips(plates: readonly string[], chosen: string | null): ChartStrip[] {
  const offered = (group: readonly string[]) =>
    plates.length <= MOST_FOR_ALL || group.includes(chosen ?? plates[0]!);
  return [
    ...plates.map((plate) => ({ plates: [plate], rows: [SINGLE.map((tint) => ({ [plate]: tint }))] })),
    ...combinations(plates, 2)
      .filter(offered)
      .map((pair) => mixes(pair, PAIR)),
    ...combinations(plates, 3)
      .filter(offered)
      .map((three) => mixes(three, TRIPLE)),
  ];
}
