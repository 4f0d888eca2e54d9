import type { Job } from '../graph/job.ts';
import type { Recipe } from '../graph/recipe.ts';
import { colourwayOf, recipeOf } from './edits.ts';

/** Two recipes have the same key when they print the same: plates at 0 % and their order do not count. */
export function recipeKey(recipe: Recipe): string {
  return Object.keys(recipe)
    .filter((plate) => recipe[plate]! > 0)
    .sort()
    .map((plate) => `${plate} ${recipe[plate]}`)
    .join(', ');
}

/**
 * The distinct recipes that regions print in the colourway in use: the one of most regions first, and the one first
 * used before another of as many. Regions count as the job remembers them; before any were found, those count that
 * the colourway names.
 */
export function recipesInUse(job: Job): Recipe[] {
  const found = job.register.regions.map(({ id }) => id);
  const regions = found.length > 0 ? found : Object.keys(colourwayOf(job).recipes);
  const uses = new Map<string, { recipe: Recipe; count: number }>();
  for (const region of regions) {
    const recipe = recipeOf(job, region);
    const key = recipeKey(recipe);
    const use = uses.get(key);
    if (use) use.count++;
    else uses.set(key, { recipe, count: 1 });
  }
  return [...uses.values()].sort((a, b) => b.count - a.count).map(({ recipe }) => recipe);
}
