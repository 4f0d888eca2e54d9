import type { End, Graph, GraphNode, Wire } from './job.ts';
import { upstreamOf, wireInto } from './order.ts';

/** Both ends of a kind that stands on a wire of plates are called so. */
const PLATES = 'plates';

/** An id for a node of this kind that no other node has: the kind, or the kind with a number. */
export function freshNodeId(kind: string, { nodes }: Pick<Graph, 'nodes'>): string {
  const taken = new Set(nodes.map(({ id }) => id));
  let id = kind;
  for (let n = 2; taken.has(id); n++) id = `${kind}-${n}`;
  return id;
}

export interface PutIn {
  graph: Graph;
  /** Id of the new node. */
  node: string;
}

/**
 * The graph with a new node between an output of plates and the ends of some of its wires.
 *
 * @param wires wires that leave one output of plates; they start at the new node afterwards
 */
export function putOnPlates(
  graph: Graph,
  kind: string,
  from: End,
  wires: readonly Wire[],
  settings: GraphNode['settings'] = {},
): PutIn {
  const id = freshNodeId(kind, graph);
  const others = graph.wires.filter((wire) => !wires.includes(wire));
  const onward = wires.map(({ to }) => ({ from: { node: id, port: PLATES }, to }));
  return {
    graph: {
      nodes: [...graph.nodes, { id, kind, settings, bypassed: false }],
      wires: [...others, { from, to: { node: id, port: PLATES } }, ...onward],
    },
    node: id,
  };
}

/** The graph with a new node where plates run into that one; null when nothing runs in. */
export function putBefore(
  graph: Graph,
  kind: string,
  node: string,
  settings: GraphNode['settings'] = {},
): PutIn | null {
  const into = wireInto(graph, node, PLATES);
  return into ? putOnPlates(graph, kind, into.from, [into], settings) : null;
}

/** The graph with a new node on all that leaves the plates of that one; null when nothing does. */
export function putAfter(graph: Graph, kind: string, node: string): PutIn | null {
  const leaving = graph.wires.filter(({ from }) => from.node === node && from.port === PLATES);
  return leaving.length > 0 ? putOnPlates(graph, kind, leaving[0]!.from, leaving) : null;
}

/** The first node of a kind among all that feed another one; undefined when none does. */
export function upstreamOfKind(graph: Graph, node: string, kind: string): GraphNode | undefined {
  const upstream = upstreamOf(graph, node);
  return graph.nodes.find((each) => each.kind === kind && upstream.has(each.id));
}
