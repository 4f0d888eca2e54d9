import type { Graph, GraphNode, Wire } from './job.ts';

/** The wire that ends in this input, if any. */
export function wireInto(graph: Graph, node: string, port: string): Wire | undefined {
  return graph.wires.find((wire) => wire.to.node === node && wire.to.port === port);
}

/**
 * Nodes in an order in which every node comes after all that feed it; nodes of equal standing keep the order of
 * the document. Null where the wires run in a circle; then `circle` names the nodes on it.
 */
export function topologicalOrder(graph: Graph): { order: GraphNode[] } | { circle: string[] } {
  const feeds = new Map<string, Set<string>>(graph.nodes.map((node) => [node.id, new Set()]));
  for (const wire of graph.wires) feeds.get(wire.to.node)?.add(wire.from.node);
  const order: GraphNode[] = [];
  const placed = new Set<string>();
  let waiting = graph.nodes;
  while (waiting.length > 0) {
    const ready = waiting.filter((node) => [...feeds.get(node.id)!].every((feed) => placed.has(feed)));
    if (ready.length === 0)
      return {
        circle: onCircle(
          waiting.map((node) => node.id),
          feeds,
        ),
      };
    for (const node of ready) {
      order.push(node);
      placed.add(node.id);
    }
    waiting = waiting.filter((node) => !placed.has(node.id));
  }
  return { order };
}

/** Walks upstream among nodes that all wait for one another until a node comes round again. */
function onCircle(waiting: string[], feeds: ReadonlyMap<string, ReadonlySet<string>>): string[] {
  const stuck = new Set(waiting);
  const walk: string[] = [];
  let at = waiting[0]!;
  while (!walk.includes(at)) {
    walk.push(at);
    at = [...feeds.get(at)!].find((feed) => stuck.has(feed))!;
  }
  return walk.slice(walk.indexOf(at)).reverse();
}

/** Ids of all nodes that feed `target`, itself included. */
export function upstreamOf(graph: Graph, target: string): Set<string> {
  const found = new Set<string>();
  const open = [target];
  while (open.length > 0) {
    const node = open.pop()!;
    if (found.has(node)) continue;
    found.add(node);
    for (const wire of graph.wires) if (wire.to.node === node) open.push(wire.from.node);
  }
  return found;
}
