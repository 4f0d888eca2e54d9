import type { GraphNode, Job } from './job.ts';
import type { Colourway, Recipe } from './recipe.ts';

/** Old plate id -> new plate id; plates that are not named keep their id. */
export type PlateNames = ReadonlyMap<string, string>;

type Json = GraphNode['settings'][string];

/** The recipe with its tints under the new names; tints of two plates that become one keep the stronger. */
export function renamedRecipe(recipe: Recipe, names: PlateNames): Recipe {
  const renamed: Recipe = {};
  for (const [plate, tint] of Object.entries(recipe)) {
    const name = names.get(plate) ?? plate;
    renamed[name] = Math.max(tint, renamed[name] ?? 0);
  }
  return renamed;
}

/** The colourway with every recipe changed. */
export function withRecipes(colourway: Colourway, change: (recipe: Recipe) => Recipe): Colourway {
  const recipes = Object.entries(colourway.recipes).map(([region, recipe]) => [region, change(recipe)]);
  const fades = Object.entries(colourway.fades ?? {}).map(
    ([region, fade]) => [region, { ...fade, from: change(fade.from), to: change(fade.to) }] as const,
  );
  return {
    ...colourway,
    recipes: Object.fromEntries(recipes),
    others: change(colourway.others),
    ...(colourway.fades && { fades: Object.fromEntries(fades) }),
  };
}

/**
 * The job with plates under other names: in settings that say something for each plate, not in recipes.
 *
 * @param names for every plate of the job
 */
export function renamePlates(job: Job, names: PlateNames): Job {
  const nodes = job.graph.nodes.map((node) => {
    const settings = Object.entries(node.settings).map(([name, value]) => [name, renamedKeys(value, names)]);
    return { ...node, settings: Object.fromEntries(settings) };
  });
  return { ...job, graph: { ...job.graph, nodes } };
}

/** A record by plate id under the new names; anything else as it is. */
function renamedKeys(value: Json, names: PlateNames): Json {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const entries = Object.entries(value as Record<string, Json>);
  if (entries.length === 0 || !entries.every(([key]) => names.has(key))) return value;
  return Object.fromEntries(entries.map(([key, each]) => [names.get(key)!, each]));
}
