import type { Graph, GraphNode, Job } from '../graph/job.ts';
import { type PutIn, putBefore, upstreamOfKind } from '../graph/put-in.ts';
import { inFeedTerms, registerOffset } from '../nodes/register-offset.ts';
import { withNode } from './edits.ts';
import { settingsOf } from './parsed.ts';

/** Farthest that a plate is set off, mm. */
const FARTHEST_MM = 20;
const STILL = { alongMm: 0, acrossMm: 0, rotationDeg: 0, stretchMm: 0 };

/** The Register offset that the proof shows; undefined in a job without. */
export function registerNode({ graph }: Pick<Job, 'graph'>): GraphNode | undefined {
  const proof = graph.nodes.find(({ kind }) => kind === 'proof');
  return proof && upstreamOfKind(graph, proof.id, registerOffset.kind);
}

/** The graph with a Register offset before its proof; null when no plates run to a proof. */
export function withRegister(graph: Graph): PutIn | null {
  const proof = graph.nodes.find(({ kind }) => kind === 'proof');
  return proof ? putBefore(graph, registerOffset.kind, proof.id, { turnsAbout: 'lay-edge' }) : null;
}

/** How far a plate is set off, mm along and across the feed. */
export function offsetOf(node: GraphNode, plate: string): { alongMm: number; acrossMm: number } {
  return settingsOf(registerOffset, node).offsets[plate] ?? STILL;
}

const held = (mm: number) => {
  const fine = Math.round(mm * 100) / 100;
  return Math.min(FARTHEST_MM, Math.max(-FARTHEST_MM, fine)) + 0;
};

/**
 * The job with a plate moved over the sheet by a Register offset, to a hundredth of a mm. One that drew offsets by
 * chance alone adds chance to what is set from then on, and a bypassed one is used again: else nothing would move.
 *
 * @param from offset that the move starts at
 * @param move mm to the right and down
 */
export function withNudge(
  job: Job,
  id: string,
  plate: string,
  from: { alongMm: number; acrossMm: number },
  move: readonly [number, number],
): Job {
  return withNode(job, id, (node) => {
    const { feedEdge, how, offsets } = settingsOf(registerOffset, node);
    const by = inFeedTerms(move, feedEdge);
    const set = {
      ...STILL,
      ...offsets[plate],
      alongMm: held(from.alongMm + by.alongMm),
      acrossMm: held(from.acrossMm + by.acrossMm),
    };
    const settings = {
      ...node.settings,
      ...(how === 'by-chance' && { how: 'both' }),
      offsets: { ...offsets, [plate]: set },
    };
    return { ...node, bypassed: false, settings };
  });
}
