import type { Graph } from '../graph/job.ts';

function sameShape(a: Graph, b: Graph): boolean {
  return (
    a.wires === b.wires &&
    a.nodes.length === b.nodes.length &&
    a.nodes.every(({ id, kind }, i) => id === b.nodes[i]!.id && kind === b.nodes[i]!.kind)
  );
}

let last: Graph | null = null;

/**
 * A graph with the nodes, kinds and wires of this one, but the same object as long as those stay: what depends on
 * the wiring alone is not worked out anew while a setting is dragged. Its settings may be old ones.
 */
export function shapeOf(graph: Graph): Graph {
  last = last && sameShape(last, graph) ? last : graph;
  return last;
}
