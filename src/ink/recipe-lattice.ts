import type { PrintModel } from './model.ts';
import type { SearchRules } from './recipe-search.ts';

/** The recipes that print in one set of plates, the darkest first. */
export interface Family {
  /** The plates, by place in print order; none for paper alone. */
  plates: readonly number[];
  /** One per recipe: tints of `plates`, one after another. */
  tints: Float64Array;
  /** One per recipe: all tints together, 1 = one solid. */
  totals: Float64Array;
  /** One per recipe: place among the recipes of this set by total and then by print order. */
  ranks: Uint32Array;
  /** Lab of each recipe, three by three; L rises. */
  labs: Float64Array;
}

/** More recipes than this are refused: they would take over a second and 50 MB to prepare. */
const MOST_RECIPES = 1_000_000;
/** Tints are kept to a thousandth of a percent, so that sums of steps stay the numbers one would type. */
const DIGITS = 100_000;
const SLACK = 1e-9;

const tidy = (tint: number): number => Math.round(tint * DIGITS) / DIGITS;

/** The tints besides 0 that the rules allow, rising. */
export function tintsOf({ step, least, most }: SearchRules): number[] {
  const tints: number[] = [];
  for (let i = 0; least + i * step <= most + SLACK; i++) tints.push(tidy(least + i * step));
  return tints.at(-1) === 1 ? tints : [...tints, 1];
}

/** Every set of at most `most` of `count` plates, smaller sets first, then in print order. */
function platesOf(count: number, most: number): number[][] {
  let sets: number[][] = [[]];
  const all = [...sets];
  for (let size = 1; size <= Math.min(count, most); size++) {
    sets = sets.flatMap((set) => {
      const next = (set.at(-1) ?? -1) + 1;
      return Array.from({ length: count - next }, (_, i) => [...set, next + i]);
    });
    all.push(...sets);
  }
  return all;
}

interface Choice {
  /** One for each of some plates. */
  tints: number[];
  total: number;
}

/** Every choice of tints for `size` plates whose total is allowed, by total, then more on the first plates. */
function choicesOf(tints: readonly number[], size: number, mostTotal: number): Choice[] {
  let choices: number[][] = [[]];
  for (let plate = 0; plate < size; plate++)
    choices = choices.flatMap((choice) => tints.toReversed().map((tint) => [...choice, tint]));
  return choices
    .map((choice) => ({ tints: choice, total: tidy(choice.reduce((sum, tint) => sum + tint, 0)) }))
    .filter(({ total }) => total <= mostTotal + SLACK)
    .sort((a, b) => a.total - b.total);
}

function familyOf(model: PrintModel, plates: readonly number[], choices: readonly Choice[]): Family {
  const recipe = new Float64Array(model.count);
  const labs = choices.map(({ tints }) => {
    for (let i = 0; i < plates.length; i++) recipe[plates[i]!] = tints[i]!;
    return model.labOf(recipe);
  });
  const ranks = Uint32Array.from(choices.keys()).sort((a, b) => labs[a]![0] - labs[b]![0] || a - b);
  const family = {
    plates,
    ranks,
    tints: new Float64Array(ranks.length * plates.length),
    totals: Float64Array.from(ranks, (rank) => choices[rank]!.total),
    labs: new Float64Array(ranks.length * 3),
  };
  ranks.forEach((rank, at) => {
    family.tints.set(choices[rank]!.tints, at * plates.length);
    family.labs.set(labs[rank]!, at * 3);
  });
  return family;
}

/** Binomials by size: how many sets of plates there are. */
function setsBySize(count: number, most: number): number[] {
  const sets = [1];
  for (let size = 1; size <= Math.min(count, most); size++)
    sets.push((sets[size - 1]! * (count - size + 1)) / size);
  return sets;
}

/**
 * All recipes that the rules allow for a print, by set of plates, paper alone among them.
 *
 * With T tints there are T^k recipes in each of the sets of k plates; 12 plates with 3 on a spot and steps of
 * 10 % make 166,000.
 *
 * @throws RangeError when the rules contradict themselves or allow more than a million recipes
 */
export function familiesOf(model: PrintModel, rules: SearchRules): Family[] {
  const { step, least, most, mostInks, mostTotal } = rules;
  if (!(step >= 0.01 && step <= 1)) throw new RangeError(`the step between tints is 0.01 to 1, not ${step}`);
  if (!(least > 0 && least <= most && most <= 1))
    throw new RangeError(`tints from ${least} to ${most} are no range within 0..1`);
  const tints = tintsOf(rules);
  const sets = setsBySize(model.count, mostInks);
  const recipes = sets.reduce((sum, many, size) => sum + many * tints.length ** size, 0);
  if (recipes > MOST_RECIPES)
    throw new RangeError(
      `these rules allow ${recipes} recipes, at most ${MOST_RECIPES} can be searched; take a larger step or fewer inks on a spot`,
    );
  const choices = sets.map((_, size) => choicesOf(tints, size, mostTotal));
  return platesOf(model.count, mostInks)
    .map((plates) => familyOf(model, plates, choices[plates.length]!))
    .filter((family) => family.ranks.length > 0);
}
