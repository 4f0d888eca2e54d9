import type { Lab } from '../graph/inks.ts';
import { ciede2000, lightnessScale } from './ciede2000.ts';
import type { PrintModel } from './model.ts';
import { type Family, familiesOf } from './recipe-lattice.ts';

/** Which recipes a search may find. Tints are shares 0..1. */
export interface SearchRules {
  /** Step between tints, 0.01..1. */
  step: number;
  /** The least and the most tint besides 0 and 1 that the press holds. */
  least: number;
  most: number;
  /** How many inks may lie on one spot. */
  mostInks: number;
  /** CIEDE2000 that a further ink must save to be worth its plate. */
  inkPenalty: number;
  /** Most of all tints together, 1 = one solid. */
  mostTotal: number;
}

export interface FoundRecipe {
  /** Share 0..1 of each plate, in print order. */
  tints: readonly number[];
  /** Predicted, D50, absolute. */
  lab: Lab;
  /** CIEDE2000 to the colour wanted. */
  distance: number;
}

export const USUAL_RULES: SearchRules = {
  step: 0.1,
  least: 0.15,
  most: 0.85,
  mostInks: 3,
  inkPenalty: 0.5,
  mostTotal: 2.4,
};

/** Scores are compared in whole units of this, so that no rounding decides between equals. */
const SCORE_STEP = 1e-6;

interface Hit {
  family: Family;
  at: number;
  distance: number;
  /** Distance and penalty in whole `SCORE_STEP`. */
  score: number;
}

/**
 * The best recipe of one set of plates.
 *
 * CIEDE2000 is at least the difference in lightness over S_L, since what chroma and hue add is never negative.
 * Going out from the wanted lightness both ways, the search stops where that bound passes what is to be beaten:
 * nothing better can lie beyond.
 *
 * @param toBeat a score; recipes above it are of no use
 */
function bestOf(family: Family, [l, a, b]: Readonly<Lab>, penalty: number, toBeat: number): Hit | null {
  const { labs, ranks } = family;
  const extra = penalty * Math.max(0, family.plates.length - 1);
  const coarsest = Math.max(
    lightnessScale((l + labs[0]!) / 2),
    lightnessScale((l + labs[labs.length - 3]!) / 2),
  );
  let best: Hit | null = null;
  let limit = toBeat;
  const from = firstAbove(labs, l);
  for (const [start, way] of [
    [from, 1],
    [from - 1, -1],
  ] as const) {
    for (let at = start; at >= 0 && at < ranks.length; at += way) {
      const off = Math.abs(labs[3 * at]! - l) / coarsest;
      if ((off + extra) / SCORE_STEP > limit + 1) break;
      const distance = ciede2000(l, a, b, labs[3 * at]!, labs[3 * at + 1]!, labs[3 * at + 2]!);
      const score = Math.round((distance + extra) / SCORE_STEP);
      if (score > limit || (best && score === best.score && ranks[at]! > ranks[best.at]!)) continue;
      best = { family, at, distance, score };
      limit = score;
    }
  }
  return best;
}

/** Index of the first recipe at least as light as `l`. */
function firstAbove(labs: Float64Array, l: number): number {
  let low = 0;
  let high = labs.length / 3;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (labs[3 * middle]! < l) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Equals go to fewer inks, then to the lower total; sorting keeps what is left in print order. */
function inOrder(one: Hit, other: Hit): number {
  return (
    one.score - other.score ||
    one.family.plates.length - other.family.plates.length ||
    one.family.totals[one.at]! - other.family.totals[other.at]!
  );
}

function recipeOf({ family: { plates, tints, labs }, at, distance }: Hit, count: number): FoundRecipe {
  const whole = new Array<number>(count).fill(0);
  plates.forEach((plate, i) => {
    whole[plate] = tints[at * plates.length + i]!;
  });
  return { tints: whole, lab: [labs[3 * at]!, labs[3 * at + 1]!, labs[3 * at + 2]!], distance };
}

/**
 * Prepares all recipes that the rules allow and finds, for a wanted Lab, the one with the least CIEDE2000 plus
 * `inkPenalty` for every ink after the first. The result is exact; of equals (to a millionth) it is the one with
 * fewer inks, then the lower total of tints, then more on the plates that print first.
 *
 * What is found: the best recipe first, then as many `alternatives` as asked for, each the best of another set
 * of plates, in order of the same score. Paper alone is a recipe like others.
 *
 * @param model a print of 1 to 12 plates
 * @throws RangeError when the rules contradict themselves or allow more than a million recipes
 */
export function recipeSearch(
  model: PrintModel,
  rules: SearchRules,
): (wanted: Lab, alternatives?: number) => FoundRecipe[] {
  const families = familiesOf(model, rules);
  return (wanted, alternatives = 0) => {
    const hits: Hit[] = [];
    for (const family of families) {
      const hit = bestOf(family, wanted, rules.inkPenalty, hits[alternatives]?.score ?? Infinity);
      if (!hit) continue;
      hits.push(hit);
      hits.sort(inOrder);
      hits.length = Math.min(hits.length, alternatives + 1);
    }
    return hits.map((hit) => recipeOf(hit, model.count));
  };
}
