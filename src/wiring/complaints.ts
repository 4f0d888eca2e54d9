import type { Complaint } from '../graph/complaint.ts';
import type { Graph, GraphNode } from '../graph/job.ts';
import type { NodeKinds } from '../graph/node-kind.ts';
import { upstreamOf } from '../graph/order.ts';
import { missingInputs } from '../graph/wiring.ts';
import { strings } from './strings.ts';

/** What each node complains of: what the results say, open inputs, and settings that do not fit. */
export function complaintsByNode(
  graph: Graph,
  kinds: NodeKinds,
  told: Readonly<Record<string, readonly Complaint[]>>,
): Map<string, readonly Complaint[]> {
  const delivered = new Set(
    graph.nodes
      .filter(({ kind }) => kind === 'press-file' || kind === 'proof')
      .flatMap(({ id }) => [...upstreamOf(graph, id)]),
  );
  const found = graph.nodes.map((node) => {
    const own = wiringComplaints(graph, kinds, node, delivered.has(node.id));
    return [
      node.id,
      [...own, ...(told[node.id] ?? []).filter(({ code }) => own.length === 0 || code !== 'cannot-run')],
    ] as const;
  });
  return new Map(found);
}

function wiringComplaints(graph: Graph, kinds: NodeKinds, node: GraphNode, counts: boolean): Complaint[] {
  const kind = kinds.get(node.kind);
  if (!kind) return [];
  const open = missingInputs(graph, kind, node).map((port) => ({
    code: 'input-open',
    severity: counts ? ('error' as const) : ('note' as const),
    message: strings.needs(kind.title, port),
  }));
  const read = kind.settings.safeParse(node.settings);
  if (read.success) return open;
  const message = strings.wrongSettings(kind.title, read.error.issues[0]?.message ?? '');
  return [...open, { code: 'settings', severity: 'error', message }];
}
