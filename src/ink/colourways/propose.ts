import type { Lab } from '../../graph/inks.ts';
import type { ProposalRules } from '../../graph/proposal-rules.ts';
import type { Recipe } from '../../graph/recipe.ts';
import { differenceOf } from '../difference.ts';
import { anneal, settle } from './anneal.ts';
import { chanceFrom } from './chance.ts';
import { type Classes, classesOf, type PlacedRegion } from './classes.ts';
import { type Kept, keptOf } from './kept.ts';
import { LayoutCost, type Palette } from './layout-cost.ts';

export interface ProposalInput {
  regions: readonly PlacedRegion[];
  rules: ProposalRules;
  /** Named groups of regions. */
  groups: readonly { regions: readonly string[] }[];
  /** What pinned regions print, by id. */
  pinned: Readonly<Record<string, Recipe>>;
  /** Predicted colour of a recipe. */
  labOf(recipe: Recipe): Lab;
  /** 1..24 */
  count: number;
  seed: number;
}

export interface Proposal {
  /** Recipe of every region. */
  recipes: Record<string, Recipe>;
  kept: Kept;
  /** Share of the area that prints otherwise than in the proposal most like it, 0..1; 1 when it is the only one. */
  different: number;
}

/** Proposals more alike than this, as a share of the area, are no second choice. */
const LEAST_DIFFERENT = 0.15;
/** So many more layouts than asked for are made, to choose those that differ. */
const SPARE = 1.5;

/**
 * Colourways from a palette: classes of regions that print alike are laid out by simulated annealing on the graph of
 * their borders; each next layout is also pushed away from those before it. Fewer come back than asked for where the
 * rules leave no room for clearly different ones.
 *
 * @throws RangeError when there is nothing to lay out
 */
export function* proposing(input: ProposalInput): Generator<{ done: number; of: number }, Proposal[]> {
  const { regions, rules, groups, pinned, count, seed } = input;
  if (regions.length === 0) throw new RangeError('the drawing has no regions to propose recipes for');
  const fixed = new Set(Object.keys(pinned));
  const classes = classesOf(regions, rules, groups, fixed);
  const { palette, recipes, colourOfPinned } = paletteOf(input);
  const start = startOf(classes, colourOfPinned, rules.palette.length);
  const movable = [...classes.classes.keys()].filter(
    (each) => !fixed.has(classes.classes[each]!.regions[0]!),
  );
  const layouts: Int32Array[] = [];
  const of = Math.ceil(count * SPARE);
  for (let turn = 0; turn < of && layouts.length < count; turn++) {
    yield { done: layouts.length, of: count };
    const chance = chanceFrom(seed + turn * 7919);
    const layout = Int32Array.from(start, (colour) =>
      colour < 0 ? Math.floor(chance() * palette.free) : colour,
    );
    const cost = new LayoutCost(classes, palette, rules, layout, layouts);
    anneal(cost, movable, palette.free, chance);
    settle(new LayoutCost(classes, palette, rules, layout, []), movable, palette.free);
    if (leastDifference(layout, layouts, classes) >= LEAST_DIFFERENT) layouts.push(layout);
  }
  return layouts.map((layout, i) => ({
    recipes: recipesBy(layout, classes, recipes),
    kept: keptOf(layout, classes, palette, rules),
    different: leastDifference(layout, layouts.toSpliced(i, 1), classes),
  }));
}

/** `proposing` run to its end. */
export function propose(input: ProposalInput): Proposal[] {
  const run = proposing(input);
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value;
}

function paletteOf({ rules, pinned, labOf }: ProposalInput) {
  const recipes: Recipe[] = rules.palette.map(({ recipe }) => recipe);
  const free = recipes.length;
  const colourOfPinned = new Map<string, number>();
  for (const [id, recipe] of Object.entries(pinned)) {
    colourOfPinned.set(id, recipes.length);
    recipes.push(recipe);
  }
  const labs = recipes.map(labOf);
  const size = recipes.length;
  const apart = new Float64Array(size * size);
  for (let one = 0; one < size; one++)
    for (let other = 0; other < one; other++) {
      const distance = differenceOf(labs[one]!, labs[other]!);
      apart[one * size + other] = distance;
      apart[other * size + one] = distance;
    }
  const totals = Float64Array.from(recipes, (recipe) =>
    Object.values(recipe).reduce((sum, tint) => sum + tint, 0),
  );
  const palette: Palette = { apart, size, free, totals };
  return { palette, recipes, colourOfPinned };
}

/** Colours of pinned classes; -1 for classes that are free. */
function startOf({ classes }: Classes, pinned: ReadonlyMap<string, number>, free: number): Int32Array {
  if (free === 0) throw new RangeError('the palette is empty; put at least one recipe in it');
  return Int32Array.from(classes, ({ regions }) => pinned.get(regions[0]!) ?? -1);
}

function recipesBy(
  layout: Int32Array,
  { classes }: Classes,
  recipes: readonly Recipe[],
): Record<string, Recipe> {
  return Object.fromEntries(
    classes.flatMap(({ regions }, each) => regions.map((id) => [id, recipes[layout[each]!]!])),
  );
}

/** Share of the area that is laid out otherwise than in the most similar of other layouts. */
function leastDifference(layout: Int32Array, others: readonly Int32Array[], { classes }: Classes): number {
  const area = classes.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const shares = others.map((other) => {
    const changed = classes.reduce(
      (sum, { areaMm2 }, i) => (other[i] === layout[i] ? sum : sum + areaMm2),
      0,
    );
    return changed / area;
  });
  return shares.length === 0 ? 1 : Math.min(...shares);
}
