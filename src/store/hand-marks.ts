import type { Graph, GraphNode, Job } from '../graph/job.ts';
import { type PutIn, putAfter, putBefore } from '../graph/put-in.ts';
import { type HandMark, handMarks } from '../nodes/hand-marks.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { withSetting } from './edits.ts';
import { nextId, settingsOf } from './parsed.ts';

/** The Hand marks that are worked at: the chosen node where it is one, else the first; undefined in a job without. */
export function marksAtHand({ graph }: Pick<Job, 'graph'>, chosen: string | null): GraphNode | undefined {
  const nodes = graph.nodes.filter(({ kind }) => kind === handMarks.kind);
  return nodes.find(({ id }) => id === chosen) ?? nodes[0];
}

/** The strokes of a Hand marks node, the first drawn first. */
export function marksOf(node: GraphNode): readonly HandMark[] {
  return settingsOf(handMarks, node).marks;
}

/** Kinds that Hand marks stand after, the latest on the sheet's way first, where there is no grain to stand before. */
const AFTER = ['key-line', 'plate-art', 'fill-plates'];

/** The graph with Hand marks where they belong: over the line and under the grain; null where no plates run. */
export function withHandMarks(
  graph: Graph,
): (PutIn & { before: string | null; after: string | null }) | null {
  const grain = graph.nodes.find(({ kind }) => kind === 'plate-grain');
  const before = grain && putBefore(graph, handMarks.kind, grain.id);
  if (before) return { ...before, before: nodeKinds.get('plate-grain')!.title, after: null };
  for (const kind of AFTER) {
    const node = graph.nodes.find((each) => each.kind === kind);
    const after = node && putAfter(graph, handMarks.kind, node.id);
    if (after) return { ...after, before: null, after: nodeKinds.get(kind)!.title };
  }
  return null;
}

/** The job with the strokes of a node changed. */
export function withMarks(
  job: Job,
  id: string,
  change: (marks: readonly HandMark[]) => readonly HandMark[],
): Job {
  const node = job.graph.nodes.find((each) => each.id === id);
  if (!node) return job;
  const before = marksOf(node);
  const after = change(before);
  if (after === before) return job;
  return withSetting(job, id, 'marks', after.length > 0 ? after : undefined);
}

/** The job with one more stroke, the last of all. */
export function withMark(job: Job, id: string, mark: Omit<HandMark, 'id'>): Job {
  return withMarks(job, id, (marks) => [...marks, { id: nextId('m', marks), ...mark }]);
}

/** A stroke moved, kept to a micrometre. */
export function movedMark(mark: HandMark, [dx, dy]: readonly [number, number]): HandMark {
  const round = (mm: number) => Math.round(mm * 1000) / 1000;
  return { ...mark, points: mark.points.map(([x, y, p]) => [round(x + dx), round(y + dy), p]) };
}
