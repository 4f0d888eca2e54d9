import type { Complaint } from '../graph/complaint.ts';
import type { Graph, GraphNode } from '../graph/job.ts';
import type { NodeKinds } from '../graph/node-kind.ts';
import { upstreamOf } from '../graph/order.ts';
import { missingInputs } from '../graph/wiring.ts';
import { strings } from './strings.ts';

/**
 * Kinds that are known by the codes of their complaints. Results do not say which node complained, so a code that is
 * not here is told of only where the message names the node.
 */
const KIND_OF_CODE: Readonly<Record<string, string>> = {
  'size-assumed': 'line-drawing',
  'picture-note': 'line-drawing',
  'pixels-not-square': 'line-drawing',
  'gaps-not-closed': 'closed-regions',
  'recipe-plate-missing': 'region-tints',
};

/** What each node complains of: what the results say, open inputs, and settings that do not fit. */
export function complaintsByNode(
  graph: Graph,
  kinds: NodeKinds,
  results: readonly Complaint[],
): Map<string, readonly Complaint[]> {
  const delivered = new Set(
    graph.nodes
      .filter(({ kind }) => kind === 'press-file' || kind === 'proof')
      .flatMap(({ id }) => [...upstreamOf(graph, id)]),
  );
  const found = graph.nodes.map((node) => {
    const own = wiringComplaints(graph, kinds, node, delivered.has(node.id));
    return [node.id, [...own, ...results.filter((each) => nodeOf(graph, each) === node.id)]] as const;
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

/** The node a complaint is about: the first that its message names, else the first of the kind that has its code. */
function nodeOf(graph: Graph, { message, code }: Complaint): string | null {
  const named = /\("([^"]+)"\)/.exec(message)?.[1];
  const byName = graph.nodes.find(({ id }) => id === named);
  const byCode = graph.nodes.find(({ kind }) => kind === KIND_OF_CODE[code]);
  return (byName ?? byCode)?.id ?? null;
}
