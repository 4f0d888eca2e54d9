import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import { canonicalJson } from '../../src/graph/keys.ts';
import type { ProposalRules } from '../../src/graph/proposal-rules.ts';
import type { Recipe } from '../../src/graph/recipe.ts';
import type { PlacedRegion } from '../../src/ink/colourways/classes.ts';
import { type Proposal, proposing } from '../../src/ink/colourways/propose.ts';
import { printModel } from '../../src/ink/model.ts';
import { printOf } from '../../src/nodes/print.ts';
import { colourwayInUse } from '../engine/engine.ts';
import type { RegionsValue } from '../engine/values.ts';
import { firstOf } from './job-ends.ts';
import { runSearch } from './run-search.ts';
import type { TaskContext } from './task.ts';

export interface ProposeInput {
  job: Job;
  rules: ProposalRules;
  /** 1..24 */
  count: number;
  seed: number;
}

/**
 * Colourways for a job's regions from a palette and rules; pinned regions print as in the colourway in use.
 *
 * @throws BadInput when the job has no regions or no inks, or a rule cannot be
 */
export async function propose(input: ProposeInput, context: TaskContext): Promise<Proposal[]> {
  const { job, rules, count, seed } = input;
  const { engine, flag, onProgress } = context;
  const node = firstOf(job, 'closed-regions');
  const print = printOf(job.graph.nodes);
  if (!node || !print) throw new BadInput('proposals need a Closed regions node and an Ink set in the job');
  if (rules.frame !== null && rules.frame >= rules.palette.length)
    throw new BadInput('the rule for what touches the frame names a recipe that the palette does not hold');
  const targets = [{ node, port: 'regions' }];
  const run = await engine.evaluate({ job, targets, scale: 1 }, flag, onProgress);
  const { recipes, others } = colourwayInUse(job);
  const nowOf = (id: string) => canonicalJson(recipes[id] ?? others);
  const regions = placedOf(run.values[0] as RegionsValue, nowOf);
  run.release();
  const there = new Set(regions.map(({ id }) => id));
  const pinned = Object.fromEntries(
    job.pins.filter((id) => there.has(id)).map((id) => [id, recipes[id] ?? others]),
  );
  const model = printModel(print.input);
  const labOf = (recipe: Recipe) => model.labOf(print.plates.map((plate) => (recipe[plate] ?? 0) / 100));
  const search = proposing({ regions, rules, groups: job.groups, pinned, labOf, count, seed });
  return runSearch('propose', search, 1, context);
}

function placedOf({ table, ids }: RegionsValue, nowOf: (id: string) => string): PlacedRegion[] {
  return table.map(({ areaMm2, boxMm, touchesFrame, neighbours, inside }, i) => ({
    id: ids[i]!,
    areaMm2,
    boxMm,
    touchesFrame,
    neighbours: neighbours.map(({ label, sharedMm }) => ({ id: ids[label - 1]!, sharedMm })),
    inside: inside === null ? null : ids[inside - 1]!,
    now: nowOf(ids[i]!),
  }));
}
