import type { Ink, Lab, Stock } from '../graph/inks.ts';
import type { Recipe } from '../graph/recipe.ts';
import { resolveInkLab } from './ink-lab.ts';
import { printModel } from './model.ts';
import type { Printing } from './model-input.ts';
import { recipeSearch, type SearchRules } from './recipe-search.ts';
import { checkSets, setStages } from './set-stages.ts';

export interface WantedColour {
  lab: Lab;
  /** How much it counts; an area, for one. */
  weight: number;
}

export interface InkSetsInput {
  /** The inks to choose from, each with its own id. */
  shelf: readonly Ink[];
  paper: Stock;
  /** How the inks print; readings of inks outside a set are left aside. */
  printing: Printing;
  wanted: readonly WantedColour[];
  /** How many inks a set has, 1..6. */
  count: number;
  rules: SearchRules;
  /** Ids of inks that must be in. */
  keep?: readonly string[];
  /** How many sets to return at most. */
  most: number;
}

export interface RankedSet {
  /** Ids in print order. */
  inks: string[];
  /** Weighted mean of the CIEDE2000 between wanted and reached. */
  mean: number;
  worst: number;
  /** The best set, or one that only a test print can tell from it. */
  withinError: boolean;
  /** In the order of what was wanted; recipes in % by ink id. */
  colours: { wanted: Lab; recipe: Recipe; lab: Lab; distance: number }[];
}

export interface RankedSets {
  /** The best first. */
  sets: RankedSet[];
  /** How many sets were tried. */
  tried: number;
  /** False when there were too many to try all, see `rankInkSets`. */
  everySet: boolean;
}

/** Mean error of a predicted overprint, CIEDE2000; see DEVELOPERS.md. */
const MODEL_ERROR = 3;
/** From this contrast ratio on an ink is laid first, or it would hide the others. */
const OPAQUE = 0.5;

/** A sensible print order: what hides first, then light before dark. */
export function inPrintOrder(inks: readonly Ink[]): Ink[] {
  const hides = ({ opacity }: Ink): number => (opacity >= OPAQUE ? 0 : 1);
  return inks.toSorted(
    (one, other) => hides(one) - hides(other) || resolveInkLab(other)[0] - resolveInkLab(one)[0],
  );
}

/**
 * By how much the means of two sets must differ before it says anything. Both means are off by the model's error
 * over the root of how many colours they average, counted by weight (Kish: square of the sum over sum of squares).
 */
function errorOf(wanted: readonly WantedColour[]): number {
  const sum = wanted.reduce((so, { weight }) => so + weight, 0);
  const squares = wanted.reduce((so, { weight }) => so + weight * weight, 0);
  return MODEL_ERROR * Math.sqrt((2 * squares) / (sum * sum));
}

type Scored = Omit<RankedSet, 'withinError'>;

function scoreOf(set: readonly Ink[], { paper, printing, wanted, rules }: InkSetsInput): Scored {
  const inks = inPrintOrder(set);
  const ids = inks.map(({ id }) => id);
  const measured = printing.measured?.filter((reading) => reading.inks.every((id) => ids.includes(id)));
  const find = recipeSearch(printModel({ ...printing, paper, inks, measured }), rules);
  const colours = wanted.map(({ lab: target }) => {
    const { tints, lab, distance } = find(target)[0]!;
    const printed = tints.flatMap((tint, i) => (tint > 0 ? [[ids[i]!, Math.round(tint * 1e5) / 1e3]] : []));
    return { wanted: target, recipe: Object.fromEntries(printed) as Recipe, lab, distance };
  });
  const weights = wanted.reduce((sum, { weight }) => sum + weight, 0);
  const mean = colours.reduce((sum, { distance }, i) => sum + distance * wanted[i]!.weight, 0) / weights;
  return { inks: ids, mean, worst: Math.max(...colours.map(({ distance }) => distance)), colours };
}

/**
 * Finds the inks of a shelf that reach some colours best, one set at a time: yields how far it is before each set.
 *
 * Up to 3000 sets are all tried. Of more, sets grow ink by ink and only the six best of each size grow on: quick
 * and usually right, but not certain, which `everySet` says.
 *
 * @throws RangeError that says what to change: nothing wanted, an unknown ink to keep, fewer inks than asked for
 */
export function* findInkSets(input: InkSetsInput): Generator<{ done: number; of: number }, RankedSets> {
  checkSets(input);
  const { shelf, wanted, most } = input;
  const stages = setStages(shelf, input.count, input.keep ?? []);
  let done = 0;
  let grown: Scored[] = [];
  for (let stage = 0; stage < stages.count; stage++) {
    const sets = stages.setsOf(
      stage,
      grown.map(({ inks }) => inks),
    );
    const scored: Scored[] = [];
    for (const set of sets) {
      yield { done, of: stages.atMost };
      scored.push(scoreOf(set, input));
      done++;
    }
    grown = scored.sort((one, other) => one.mean - other.mean || one.worst - other.worst);
  }
  const limit = grown[0]!.mean + errorOf(wanted);
  const sets = grown.slice(0, most).map((set, i) => ({ ...set, withinError: i === 0 || set.mean < limit }));
  return { sets, tried: done, everySet: stages.everySet };
}

/** `findInkSets` run to its end. */
export function rankInkSets(input: InkSetsInput): RankedSets {
  const search = findInkSets(input);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value;
}
