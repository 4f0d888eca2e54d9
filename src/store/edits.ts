import type { Graph, GraphNode, Job } from '../graph/job.ts';
import type { Colourway, Recipe } from '../graph/recipe.ts';

/** The colourway in use. */
export function colourwayOf(job: Job): Colourway {
  return job.colourways.find(({ id }) => id === job.colourway)!;
}

/** The job with its graph changed. */
export function withGraph(job: Job, change: (graph: Graph) => Graph): Job {
  return { ...job, graph: change(job.graph) };
}

/** The job with one node changed. */
export function withNode(job: Job, id: string, change: (node: GraphNode) => GraphNode): Job {
  return withGraph(job, (graph) => ({
    ...graph,
    nodes: graph.nodes.map((node) => (node.id === id ? change(node) : node)),
  }));
}

/** The job with one setting of a node set; a setting set to undefined goes back to its default. */
export function withSetting(job: Job, id: string, name: string, value: unknown): Job {
  return withNode(job, id, (node) => {
    const { [name]: _, ...others } = node.settings;
    const settings =
      value === undefined ? others : { ...others, [name]: value as GraphNode['settings'][string] };
    return { ...node, settings };
  });
}

/** The job with the colourway in use changed. */
export function withColourway(job: Job, change: (colourway: Colourway) => Colourway): Job {
  return {
    ...job,
    colourways: job.colourways.map((each) => (each.id === job.colourway ? change(each) : each)),
  };
}

/** The job with a recipe given to regions, in the colourway in use; it takes the place of their fades. */
export function withRecipe(job: Job, regions: readonly string[], recipe: Recipe): Job {
  return withoutFades(
    withColourway(job, (colourway) => ({
      ...colourway,
      recipes: { ...colourway.recipes, ...Object.fromEntries(regions.map((id) => [id, recipe])) },
    })),
    regions,
  );
}

/** The job without the fades of some regions, in the colourway in use. */
export function withoutFades(job: Job, regions: readonly string[]): Job {
  const gone = new Set(regions);
  return withColourway(job, (colourway) => {
    const { fades, ...others } = colourway;
    const kept = Object.entries(fades ?? {}).filter(([id]) => !gone.has(id));
    return kept.length > 0 ? { ...others, fades: Object.fromEntries(kept) } : others;
  });
}

/** Whether a region prints a fade in the colourway in use. */
export function hasFade(job: Job, region: string): boolean {
  return Object.hasOwn(colourwayOf(job).fades ?? {}, region);
}

/** What a region prints in the colourway in use. */
export function recipeOf(job: Job, region: string): Recipe {
  const colourway = colourwayOf(job);
  return Object.hasOwn(colourway.recipes, region) ? colourway.recipes[region]! : colourway.others;
}

/** An id that nothing in the list has: the stem, or the stem with a number. */
export function freshId(stem: string, taken: readonly { id: string }[]): string {
  const ids = new Set(taken.map(({ id }) => id));
  if (!ids.has(stem)) return stem;
  let number = 2;
  while (ids.has(`${stem}-${number}`)) number++;
  return `${stem}-${number}`;
}
