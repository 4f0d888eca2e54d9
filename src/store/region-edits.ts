import { z } from 'zod';
import type { GraphNode, Job } from '../graph/job.ts';
import { type RegionEdit, regionEditSchema } from '../graph/region-edits.ts';
import { closedRegions } from '../nodes/closed-regions.ts';
import { withSetting } from './edits.ts';

type WithoutId<Edit> = Edit extends unknown ? Omit<Edit, 'id'> : never;

/** A hand edit before it has an id. */
export type MadeEdit = WithoutId<RegionEdit>;

const NONE: readonly RegionEdit[] = [];
const listSchema = z.array(regionEditSchema);
const known = new WeakMap<object, readonly RegionEdit[]>();

/** The node that finds the regions; undefined in a job without one. */
export function regionsNode({ graph }: Pick<Job, 'graph'>): GraphNode | undefined {
  return graph.nodes.find(({ kind }) => kind === closedRegions.kind);
}

/** What was done to the regions by hand, in the order it was done. */
export function handEdits(job: Pick<Job, 'graph'>): readonly RegionEdit[] {
  const setting = regionsNode(job)?.settings.edits;
  if (setting === null || typeof setting !== 'object') return NONE;
  const edits = known.get(setting) ?? listSchema.parse(setting);
  known.set(setting, edits);
  return edits;
}

function withEdits(job: Job, edits: readonly RegionEdit[]): Job {
  const node = regionsNode(job);
  return node ? withSetting(job, node.id, 'edits', edits.length > 0 ? edits : undefined) : job;
}

/** The job with one more hand edit, the last of all; unchanged when it has no Closed regions. */
export function withEdit(job: Job, made: MadeEdit): Job {
  const edits = handEdits(job);
  const numbers = edits.map(({ id }) => Number(/^e(\d+)$/.exec(id)?.[1] ?? 0));
  const id = `e${Math.max(0, ...numbers) + 1}`;
  return withEdits(job, [...edits, { ...made, id } as RegionEdit]);
}

/** The job with a hand edit taken back; unchanged when it has none of that id. */
export function withoutEdit(job: Job, id: string): Job {
  const edits = handEdits(job);
  const left = edits.filter((each) => each.id !== id);
  return left.length === edits.length ? job : withEdits(job, left);
}
