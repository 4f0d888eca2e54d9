import { type Edge, type Node, Position } from '@xyflow/react';
import type { End, Graph, Wire } from '../graph/job.ts';
import type { NodeKinds } from '../graph/node-kind.ts';
import type { Layout, Point } from './layout.ts';
import { MEASURES, portX } from './measures.ts';

export type TicketNode = Node<Record<string, never>, 'ticket'>;

export type StrandEdge = Edge<{ wire: Wire; way: readonly Point[]; plates: boolean }, 'strand'>;

const NOTHING: Record<string, never> = {};

/** What tells one wire from all others. */
export function wireKey({ from, to }: Wire): string {
  return `${from.node}.${from.port}>${to.node}.${to.port}`;
}

/** How far the two ports of a wire stand from the middles of their tickets. */
export function portOffsets(graph: Graph, kinds: NodeKinds, { from, to }: Wire): { out: number; in: number } {
  const offset = ({ node, port }: End, side: 'inputs' | 'outputs') => {
    const kind = kinds.get(graph.nodes.find(({ id }) => id === node)?.kind ?? '');
    const names = Object.keys(kind?.[side] ?? {});
    return names.includes(port) ? portX(names.indexOf(port), names.length) - MEASURES.width / 2 : 0;
  };
  return { out: offset(from, 'outputs'), in: offset(to, 'inputs') };
}

/** The tickets where the layout puts them, their ports included, so that wires can be drawn at once. */
export function ticketNodes(graph: Graph, kinds: NodeKinds, { places }: Layout): TicketNode[] {
  const { width, height } = MEASURES;
  return graph.nodes.map(({ id, kind }) => {
    const ports = (type: 'source' | 'target', names: string[]) =>
      names.map((port, i) => ({
        id: port,
        type,
        position: type === 'source' ? Position.Bottom : Position.Top,
        x: portX(i, names.length),
        y: type === 'source' ? height : 0,
        width: 1,
        height: 1,
      }));
    const declared = kinds.get(kind);
    return {
      id,
      type: 'ticket',
      position: places.get(id)!,
      data: NOTHING,
      width,
      height,
      measured: { width, height },
      handles: [
        ...ports('target', Object.keys(declared?.inputs ?? {})),
        ...ports('source', Object.keys(declared?.outputs ?? {})),
      ],
    };
  });
}

/** The wires as strands along the ways of the layout. */
export function strandEdges(graph: Graph, kinds: NodeKinds, { places, ways }: Layout): StrandEdge[] {
  const kindOf = new Map(graph.nodes.map(({ id, kind }) => [id, kinds.get(kind)]));
  const portOf = (end: End, side: 'inputs' | 'outputs'): Point | null => {
    const place = places.get(end.node);
    const names = Object.keys(kindOf.get(end.node)?.[side] ?? {});
    const at = names.indexOf(end.port);
    if (!place || at < 0) return null;
    return {
      x: place.x + portX(at, names.length),
      y: side === 'inputs' ? place.y : place.y + MEASURES.height,
    };
  };
  return graph.wires.flatMap((wire, i) => {
    const start = portOf(wire.from, 'outputs');
    const end = portOf(wire.to, 'inputs');
    if (!start || !end) return [];
    const plates = kindOf.get(wire.from.node)?.outputs[wire.from.port]?.type === 'plates';
    return {
      id: wireKey(wire),
      type: 'strand',
      source: wire.from.node,
      sourceHandle: wire.from.port,
      target: wire.to.node,
      targetHandle: wire.to.port,
      data: { wire, way: [start, ...(ways[i] ?? []), end], plates },
    };
  });
}
