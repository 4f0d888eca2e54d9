import type { Recipe } from '../../graph/recipe.ts';

/** Recipes of one plate, or of two over one another, in an order that looks like one movement. */
export interface Strip {
  /** One or two plate ids. */
  plates: readonly string[];
  recipes: readonly Recipe[];
}

const SINGLE = [15, 30, 45, 60, 75, 85, 100];
/** From much of the first to much of the second, darkest in the middle. */
const PAIR = [
  [50, 20],
  [100, 30],
  [100, 65],
  [100, 100],
  [65, 100],
  [30, 100],
  [20, 50],
] as const;

/** Beyond so many plates only the pairs with one of them are offered. */
const MOST_FOR_ALL_PAIRS = 5;

/**
 * A strip for every plate and for every pair.
 *
 * @param plates in print order
 * @param chosen the plate whose pairs are offered when there are too many
 */
export function stripsOf(plates: readonly string[], chosen: string | null): Strip[] {
  const singles = plates.map((plate) => ({
    plates: [plate],
    recipes: SINGLE.map((tint) => ({ [plate]: tint })),
  }));
  const pairs = plates.flatMap((one, i) => plates.slice(i + 1).map((other) => [one, other] as const));
  const all = plates.length <= MOST_FOR_ALL_PAIRS;
  const offered = pairs.filter((pair) => all || pair.includes(chosen ?? plates[0]!));
  const mixed = offered.map(([one, other]) => ({
    plates: [one, other],
    recipes: PAIR.map(([first, second]) => ({ [one]: first, [other]: second })),
  }));
  return [...singles, ...mixed];
}
