import { BadInput, type Complaint } from './complaint.ts';
import { refuseDoubles } from './doubles.ts';
import type { End, Graph, GraphNode } from './job.ts';
import type { NodeKind, NodeKinds } from './node-kind.ts';
import { topologicalOrder, upstreamOf, wireInto } from './order.ts';
import type { InputPort } from './ports.ts';

/** Why a wire cannot run from `from` to `to`, as a sentence for the person; null when it can. */
export function whyNot(graph: Graph, kinds: NodeKinds, from: End, to: End): string | null {
  const source = kindOf(graph, kinds, from.node);
  const target = kindOf(graph, kinds, to.node);
  if (!source) return `there is no node "${from.node}"`;
  if (!target) return `there is no node "${to.node}"`;
  const output = portOf(source.outputs, from.port);
  const input = portOf(target.inputs, to.port);
  if (!output)
    return `${source.title} ("${from.node}") has no output "${from.port}"; it has ${list(source.outputs)}`;
  if (!input)
    return `${target.title} ("${to.node}") has no input "${to.port}"; it has ${list(target.inputs)}`;
  if (output.type !== input.type)
    return `${source.title} gives ${output.type}, but the input "${to.port}" of ${target.title} takes ${input.type}`;
  if (upstreamOf(graph, from.node).has(to.node))
    return `${target.title} ("${to.node}") already feeds ${source.title} ("${from.node}"): this wire would run in a circle`;
  return null;
}

/**
 * Checks ids, wires and required inputs of a whole graph.
 * @throws BadInput on the first thing that makes the graph impossible to run
 */
export function checkGraph(graph: Graph, kinds: NodeKinds): void {
  refuseDoubles('nodes', graph.nodes);
  const ids = new Set(graph.nodes.map((node) => node.id));
  for (const node of graph.nodes) {
    if (!kinds.has(node.kind))
      throw new BadInput(
        `node "${node.id}" is of the unknown kind "${node.kind}"; it may come from a newer Keyblock (known: ${[...kinds.keys()].join(', ')})`,
      );
  }
  const sorted = topologicalOrder(withKnownEnds(graph, ids));
  if ('circle' in sorted)
    throw new BadInput(
      `the wires run in a circle: ${[...sorted.circle, sorted.circle[0]].join(' -> ')}; remove one of them`,
    );
  const filled = new Set<string>();
  for (const wire of graph.wires) {
    const others = { nodes: graph.nodes, wires: graph.wires.filter((other) => other !== wire) };
    const reason = whyNot(others, kinds, wire.from, wire.to);
    if (reason) throw new BadInput(`a wire cannot run: ${reason}`);
    const end = `${wire.to.node}.${wire.to.port}`;
    if (filled.has(end)) throw new BadInput(`two wires end in ${end}; each input takes one wire`);
    filled.add(end);
  }
}

/** The inputs of a node that need a wire and have none. */
export function missingInputs(graph: Graph, kind: NodeKind, node: GraphNode): string[] {
  return Object.entries(kind.inputs)
    .filter(([port, input]) => !input.optional && !wireInto(graph, node.id, port))
    .map(([port]) => port);
}

/**
 * The input that a bypassed node hands on as its output `port`: the first of the same type.
 * Null when the kind has none, and so cannot be bypassed.
 */
export function bypassInput(kind: NodeKind, port: string): string | null {
  const output = kind.outputs[port];
  const same = ([, input]: [string, InputPort]) => output !== undefined && input.type === output.type;
  return Object.entries(kind.inputs).find(same)?.[0] ?? null;
}

/** Complaints about what a delivery node would deliver, from the wiring alone. */
export function lintGraph(graph: Graph, kinds: NodeKinds): Complaint[] {
  return graph.nodes.flatMap((node) => {
    if (kinds.get(node.kind)?.role !== 'delivery') return [];
    return [...upstreamOf(graph, node.id)].flatMap((id) => {
      const upstream = graph.nodes.find((other) => other.id === id)!;
      const kind = kinds.get(upstream.kind);
      const onPlates = kind && Object.values(kind.outputs).some(({ type }) => type === 'plates');
      if (kind?.role !== 'simulation' || !onPlates || upstream.bypassed) return [];
      const title = kinds.get(node.kind)!.title;
      return [
        {
          code: 'simulation-delivered',
          severity: 'error' as const,
          message: `${kind.title} ("${id}") is a simulation but runs into ${title} ("${node.id}"): the press would print it; wire ${title} to what comes before it`,
        },
      ];
    });
  });
}

function kindOf(graph: Graph, kinds: NodeKinds, id: string): NodeKind | undefined {
  const node = graph.nodes.find((candidate) => candidate.id === id);
  return node && kinds.get(node.kind);
}

function portOf<Port>(ports: Readonly<Record<string, Port>>, name: string): Port | undefined {
  return Object.hasOwn(ports, name) ? ports[name] : undefined;
}

function withKnownEnds(graph: Graph, ids: ReadonlySet<string>): Graph {
  const wires = graph.wires.filter((wire) => ids.has(wire.from.node) && ids.has(wire.to.node));
  return { nodes: graph.nodes, wires };
}

function list(ports: Readonly<Record<string, unknown>>): string {
  return Object.keys(ports).join(', ') || 'none';
}
