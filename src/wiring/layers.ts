import type { Graph } from '../graph/job.ts';
import { topologicalOrder } from '../graph/order.ts';

/**
 * The layer of every node, 0 at the top: the longest run of wires that leads to it. A node that nothing feeds
 * moves down until just above the first node it feeds; a node without any wire stands below all others.
 * A graph whose wires run in a circle has all its nodes in layer 0.
 */
export function layersOf(graph: Graph): Map<string, number> {
  const sorted = topologicalOrder(graph);
  const layers = new Map(graph.nodes.map(({ id }) => [id, 0]));
  if ('circle' in sorted) return layers;
  for (const { id } of sorted.order) {
    const feeds = graph.wires
      .filter((wire) => wire.to.node === id)
      .map((wire) => layers.get(wire.from.node)!);
    layers.set(id, Math.max(-1, ...feeds) + 1);
  }
  const deepest = Math.max(0, ...layers.values());
  for (const { id } of graph.nodes) {
    if (graph.wires.some((wire) => wire.to.node === id)) continue;
    const fed = graph.wires.filter((wire) => wire.from.node === id).map((wire) => layers.get(wire.to.node)!);
    layers.set(id, fed.length > 0 ? Math.min(...fed) - 1 : deepest + 1);
  }
  return onlyUsed(layers);
}

/** The same layers without empty ones between them. */
function onlyUsed(layers: Map<string, number>): Map<string, number> {
  const used = [...new Set(layers.values())].sort((a, b) => a - b);
  return new Map([...layers].map(([id, layer]) => [id, used.indexOf(layer)]));
}

/** Ids of all nodes from the top of the sheet's way to its end; within a layer in the order of the document. */
export function flowOrder(graph: Graph): string[] {
  const layers = layersOf(graph);
  return graph.nodes.map(({ id }) => id).sort((a, b) => layers.get(a)! - layers.get(b)!);
}
