import type { End, Graph, GraphNode, Wire } from '../graph/job.ts';
import type { NodeKind, NodeKinds } from '../graph/node-kind.ts';
import { wireInto } from '../graph/order.ts';
import { bypassInput, whyNot } from '../graph/wiring.ts';
import { freshId } from '../store/edits.ts';

/** An edit of the graph: what it gave, or why it cannot be, as a sentence for the person. */
export type Edited = { graph: Graph; node: string | null } | { refused: string };

const sameEnd = (a: End, b: End) => a.node === b.node && a.port === b.port;

/** Whether two wires join the same two ends. */
export const sameWire = (a: Wire, b: Wire) => sameEnd(a.from, b.from) && sameEnd(a.to, b.to);

/** The graph with one more node, not yet wired; `node` is its id. */
export function addNode(graph: Graph, kind: string): { graph: Graph; node: string } {
  const node: GraphNode = { id: freshId(kind, graph.nodes), kind, settings: {}, bypassed: false };
  return { graph: { ...graph, nodes: [...graph.nodes, node] }, node: node.id };
}

/** Whether a kind can hand on unchanged what comes in, at each of its outputs. */
export function canBypass(kind: NodeKind): boolean {
  const ports = Object.keys(kind.outputs);
  return ports.length > 0 && ports.every((port) => bypassInput(kind, port) !== null);
}

/**
 * The graph without a node. What came in at the input that the node would hand on when bypassed now runs on to
 * all that the node fed, so that taking a step out of a run of plates does not cut it.
 */
export function removeNode(graph: Graph, kinds: NodeKinds, id: string): Graph {
  const removed = graph.nodes.find((node) => node.id === id);
  if (!removed) return graph;
  const kind = kinds.get(removed.kind);
  const healed = (wire: Wire): Wire[] => {
    if (wire.to.node === id) return [];
    if (wire.from.node !== id) return [wire];
    const input = kind && bypassInput(kind, wire.from.port);
    const feed = input ? wireInto(graph, id, input) : undefined;
    return feed ? [{ from: feed.from, to: wire.to }] : [];
  };
  return { nodes: graph.nodes.filter((node) => node !== removed), wires: graph.wires.flatMap(healed) };
}

/** The graph with a wire from an output to an input, in place of the wire that ended there. */
export function connect(graph: Graph, kinds: NodeKinds, from: End, to: End): Edited {
  const wires = graph.wires.filter((wire) => !sameEnd(wire.to, to));
  const reason = whyNot({ ...graph, wires }, kinds, from, to);
  if (reason) return { refused: reason };
  return { graph: { ...graph, wires: [...wires, { from, to }] }, node: to.node };
}

/** The graph without a wire. */
export function disconnect(graph: Graph, wire: Wire): Graph {
  return { ...graph, wires: graph.wires.filter((other) => !sameWire(other, wire)) };
}

/** The ports by which a kind can stand on a wire of a type: the first input and output of it; null when it cannot. */
export function through(kind: NodeKind, type: string): { input: string; output: string } | null {
  const first = (ports: Readonly<Record<string, { type: string }>>) =>
    Object.entries(ports).find(([, port]) => port.type === type)?.[0];
  const input = first(kind.inputs);
  const output = first(kind.outputs);
  return input && output ? { input, output } : null;
}

/** The type of what runs along a wire; null when its output is unknown. */
export function typeOf(graph: Graph, kinds: NodeKinds, from: End): string | null {
  const node = graph.nodes.find(({ id }) => id === from.node);
  const kind = node && kinds.get(node.kind);
  return kind && Object.hasOwn(kind.outputs, from.port) ? kind.outputs[from.port]!.type : null;
}

/** The kinds that can be inserted on a wire, in the order of the registry. */
export function kindsFor(graph: Graph, kinds: NodeKinds, wire: Wire): NodeKind[] {
  const type = typeOf(graph, kinds, wire.from);
  return type === null ? [] : [...kinds.values()].filter((kind) => through(kind, type));
}

/** The graph with a new node on a wire; the node's other inputs stay open. */
export function insertOnWire(graph: Graph, kinds: NodeKinds, wire: Wire, name: string): Edited {
  const kind = kinds.get(name);
  const type = typeOf(graph, kinds, wire.from);
  const ports = kind && type ? through(kind, type) : null;
  if (!kind || !ports)
    return { refused: `${kind?.title ?? name} cannot stand on a wire that carries ${type}` };
  if (!graph.wires.some((other) => sameWire(other, wire)))
    return { refused: 'this wire is no longer there; choose another' };
  const added = addNode(graph, name);
  const wires = [
    ...disconnect(graph, wire).wires,
    { from: wire.from, to: { node: added.node, port: ports.input } },
    { from: { node: added.node, port: ports.output }, to: wire.to },
  ];
  return { graph: { ...added.graph, wires }, node: added.node };
}

/** The graph with a node bypassed or in use again. */
export function setBypassed(graph: Graph, id: string, bypassed: boolean): Graph {
  return { ...graph, nodes: graph.nodes.map((node) => (node.id === id ? { ...node, bypassed } : node)) };
}
