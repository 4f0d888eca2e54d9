import type { End, Job } from '../../src/graph/job.ts';
import { upstreamOf, wireInto } from '../../src/graph/order.ts';

/** The first node of a kind, in document order. */
export function firstOf(job: Job, kind: string): string | null {
  return job.graph.nodes.find((node) => node.kind === kind)?.id ?? null;
}

/** What feeds an input of a node; null without node or wire. */
export function feeding(job: Job, node: string | null, port: string): End | null {
  return node === null ? null : (wireInto(job.graph, node, port)?.from ?? null);
}

/** The first node of a kind among those that feed `target`. */
export function upstreamKind(job: Job, target: string, kind: string): string | null {
  const upstream = upstreamOf(job.graph, target);
  return job.graph.nodes.find((node) => node.kind === kind && upstream.has(node.id))?.id ?? null;
}
