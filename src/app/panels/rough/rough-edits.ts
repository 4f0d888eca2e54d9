import type { Asset } from '../../../../workers/client.ts';
import type { Job } from '../../../graph/job.ts';
import { hashBytes } from '../../../graph/keys.ts';
import type { Matches } from '../../../graph/matches.ts';
import { withRough } from '../../../graph/with-rough.ts';
import { withColourway, withGraph } from '../../../store/edits.ts';
import { addFile, edit } from '../../../store/job-store.ts';
import { roughTexts as texts } from './strings.ts';

/** Gives the open job a rough, as one step. @throws BadInput when the graph has no place for it */
export function addRough(asset: Asset): void {
  const hash = hashBytes(asset.bytes);
  addFile(hash, asset);
  edit(texts.step, (job) => withRough(job, asset.name, hash));
}

/** The job without its rough: Match rough nodes go with their wires. */
export function withoutRough(job: Job): Job {
  const gone = new Set(job.graph.nodes.flatMap(({ id, kind }) => (kind === 'match-rough' ? [id] : [])));
  return withGraph(job, ({ nodes, wires }) => ({
    nodes: nodes.filter(({ id }) => !gone.has(id)),
    wires: wires.filter(({ from, to }) => !gone.has(from.node) && !gone.has(to.node)),
  }));
}

/** The job with the matched recipes in its colourway, where that has none of its own for a region. */
export function withMatches(job: Job, { regions }: Pick<Matches, 'regions'>): Job {
  const matched = Object.fromEntries(regions.map(({ id, recipe }) => [id, recipe]));
  return withColourway(job, (colourway) => ({ ...colourway, recipes: { ...matched, ...colourway.recipes } }));
}
