import { BadInput } from '../../src/graph/complaint.ts';
import type { GraphNode, Job } from '../../src/graph/job.ts';
import { type Recipe, recipeOfShares } from '../../src/graph/recipe.ts';
import { renamedRecipe, renamePlates, withRecipes } from '../../src/graph/rename-plates.ts';
import { printModel } from '../../src/ink/model.ts';
import { recipeSearch, type SearchRules, USUAL_RULES } from '../../src/ink/recipe-search.ts';
import { inkSet } from '../../src/nodes/ink-set.ts';
import { type Print, printOf } from '../../src/nodes/print.ts';
import type { TaskContext } from './task.ts';

export interface SwapInksInput {
  job: Job;
  /** Settings of the Ink set to print with: `inks` and `plates`, the rest as it was where left out. */
  set: GraphNode['settings'];
  /** Recipes that look as near as can be, or the same tints in the new inks by place in print order. */
  recipes: 'alike' | 'tints';
  rules?: SearchRules;
}

/**
 * The job printed with other inks, in all its colourways.
 *
 * @throws BadInput when the job has no Ink set or the new one cannot print
 */
export async function swapInks(input: SwapInksInput, _context: TaskContext): Promise<Job> {
  const { job, set, recipes, rules = USUAL_RULES } = input;
  const node = job.graph.nodes.find(({ kind }) => kind === inkSet.kind);
  const before = printOf(job.graph.nodes);
  if (!node || !before) throw new BadInput('the job has no Ink set to swap inks in');
  const settings = { ...node.settings, ...set };
  const nodes = job.graph.nodes.map((each) => (each === node ? { ...node, settings } : each));
  const after = printOf(nodes);
  if (!after)
    throw new BadInput('the new ink set cannot be read; give it inks, and plates that print in them');
  const names = new Map(
    before.plates.map((plate, i) => [plate, after.plates[Math.min(i, after.plates.length - 1)]!]),
  );
  const swapped = renamePlates({ ...job, graph: { ...job.graph, nodes } }, names);
  const change =
    recipes === 'tints' ? (recipe: Recipe) => renamedRecipe(recipe, names) : lookAlikes(before, after, rules);
  return { ...swapped, colourways: job.colourways.map((colourway) => withRecipes(colourway, change)) };
}

/** For a recipe of one print the recipe of another whose colour comes nearest. Bare paper stays bare. */
function lookAlikes(before: Print, after: Print, rules: SearchRules): (recipe: Recipe) => Recipe {
  const model = printModel(before.input);
  const search = recipeSearch(printModel(after.input), rules);
  const known = new Map<string, Recipe>();
  return (recipe) => {
    const tints = before.plates.map((plate) => (recipe[plate] ?? 0) / 100);
    if (tints.every((tint) => tint === 0)) return {};
    const key = tints.join();
    const found = known.get(key) ?? recipeOfShares(search(model.labOf(tints))[0]!.tints, after.plates);
    known.set(key, found);
    return found;
  };
}
