import type { Job } from '../../src/graph/job.ts';
import type { ProposalRules } from '../../src/graph/proposal-rules.ts';
import { propose } from './propose.ts';
import { regionMap } from './region-map.ts';
import type { TaskContext } from './task.ts';

export interface StyleRecipesInput {
  job: Job;
  rules: ProposalRules;
  seed: number;
}

/** Regions are looked at for their ids alone. */
const SCALE = 16;

/**
 * The job with recipes for its regions by a style's rules, in its colourway, and its regions remembered. A job with
 * a rough keeps to the rough: only its regions are remembered.
 *
 * @throws BadInput when the drawing cannot be used
 */
export async function styleRecipes(
  { job, rules, seed }: StyleRecipesInput,
  context: TaskContext,
): Promise<Job> {
  const { register } = await regionMap({ job, scale: SCALE }, context);
  const named = { ...job, register };
  if (job.graph.nodes.some(({ kind }) => kind === 'match-rough')) return named;
  const [proposal] = await propose({ job: named, rules, count: 1, seed }, context);
  const colourways = named.colourways.map((colourway) =>
    colourway.id === named.colourway ? { ...colourway, recipes: proposal!.recipes } : colourway,
  );
  return { ...named, colourways };
}
