import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultGraph } from '../../../src/graph/default-graph.ts';
import type { End, Graph, Wire } from '../../../src/graph/job.ts';
import { wireInto } from '../../../src/graph/order.ts';
import { checkGraph } from '../../../src/graph/wiring.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import {
  addNode,
  canBypass,
  connect,
  disconnect,
  type Edited,
  insertOnWire,
  kindsFor,
  removeNode,
  setBypassed,
} from '../../../src/wiring/graph-edits.ts';

const GRAPH = defaultGraph({}, {});

const end = (text: string): End => {
  const [node, port] = text.split('.');
  return { node: node!, port: port! };
};
const wire = (from: string, to: string): Wire => ({ from: end(from), to: end(to) });
const feed = (graph: Graph, to: string) => {
  const found = wireInto(graph, end(to).node, end(to).port);
  return found && `${found.from.node}.${found.from.port}`;
};
const done = (edited: Edited): Graph => {
  if ('refused' in edited) throw new Error(edited.refused);
  return edited.graph;
};
const joined = (graph: Graph, from: string, to: string) => connect(graph, nodeKinds, end(from), end(to));

describe('adding a node', () => {
  it('gives it an id of its own and no wires', () => {
    const { graph, node } = addNode(GRAPH, 'plate-grain');
    expect(node).toBe('plate-grain-2');
    expect(graph.wires).toBe(GRAPH.wires);
    expect(() => checkGraph(graph, nodeKinds)).not.toThrow();
  });
});

describe('connecting', () => {
  it('replaces the wire that ended at the input', () => {
    const graph = done(joined(GRAPH, 'fill-plates.plates', 'press-file.plates'));
    expect(feed(graph, 'press-file.plates')).toBe('fill-plates.plates');
    expect(graph.wires.length).toBe(GRAPH.wires.length);
  });

  it('refuses unlike types with the reason and leaves the graph', () => {
    expect(joined(GRAPH, 'ink-set.inks', 'proof.paper')).toEqual({
      refused: 'Ink set gives inks, but the input "paper" of Proof takes paper',
    });
  });

  it('refuses a circle with the reason', () => {
    const refused = joined(GRAPH, 'plate-grain.plates', 'key-line.plates');
    expect(refused).toHaveProperty('refused', expect.stringContaining('circle'));
  });
});

describe('removing a node', () => {
  it('lets what it handed on run past, so that the plates still reach the press', () => {
    const graph = removeNode(GRAPH, nodeKinds, 'plate-grain');
    expect(feed(graph, 'press-file.plates')).toBe('key-line.plates');
    expect(feed(graph, 'register-offset.plates')).toBe('key-line.plates');
  });

  it('takes its wires with it where it makes its output itself', () => {
    const graph = removeNode(GRAPH, nodeKinds, 'ink-set');
    expect(feed(graph, 'fill-plates.inks')).toBeUndefined();
    expect(feed(graph, 'fill-plates.recipes')).toBe('region-tints.recipes');
  });

  it('does nothing when the node is not there', () => {
    expect(removeNode(GRAPH, nodeKinds, 'gone')).toBe(GRAPH);
  });
});

describe('inserting on a wire', () => {
  const PLATES = wire('plate-grain.plates', 'register-offset.plates');

  it('wires the new node between the two ends and leaves the other wires of the output', () => {
    const graph = done(insertOnWire(GRAPH, nodeKinds, PLATES, 'plate-grain'));
    expect(feed(graph, 'register-offset.plates')).toBe('plate-grain-2.plates');
    expect(feed(graph, 'plate-grain-2.plates')).toBe('plate-grain.plates');
    expect(feed(graph, 'press-file.plates')).toBe('plate-grain.plates');
  });

  it('offers only kinds that take and give what runs along the wire', () => {
    const kinds = kindsFor(GRAPH, nodeKinds, PLATES).map(({ kind }) => kind);
    expect(kinds).toContain('plate-grain');
    expect(kinds).toContain('register-offset');
    expect(kinds).not.toContain('proof');
    expect(kindsFor(GRAPH, nodeKinds, wire('paper-stock.paper', 'proof.paper'))).toEqual([]);
  });

  it('refuses a kind that does not fit, and a wire that is gone', () => {
    expect(insertOnWire(GRAPH, nodeKinds, PLATES, 'clean-line')).toHaveProperty('refused');
    const gone = wire('key-line.plates', 'press-file.plates');
    expect(insertOnWire(GRAPH, nodeKinds, gone, 'plate-grain')).toHaveProperty('refused');
  });
});

describe('bypassing', () => {
  it('is for kinds that can hand on their input at every output', () => {
    const able = [...nodeKinds.values()].filter(canBypass).map(({ kind }) => kind);
    expect(able).toContain('plate-grain');
    expect(able).toContain('key-line');
    expect(able).not.toContain('ink-set');
    expect(able).not.toContain('press-file');
    expect(able).not.toContain('closed-regions');
  });
});

describe('any run of edits', () => {
  const pick = <Item>(items: readonly Item[], n: number): Item => items[n % items.length]!;
  const KINDS = [...nodeKinds.keys()];
  const ends = (graph: Graph, side: 'inputs' | 'outputs'): End[] =>
    graph.nodes.flatMap(({ id, kind }) =>
      Object.keys(nodeKinds.get(kind)![side]).map((port) => ({ node: id, port })),
    );

  /** One edit, chosen by three numbers; a refused one changes nothing. */
  function edited(graph: Graph, [what, a, b]: readonly [number, number, number]): Graph {
    const or = (result: Edited) => ('refused' in result ? graph : result.graph);
    const noNodes = graph.nodes.length === 0;
    const noWires = graph.wires.length === 0;
    if (noNodes || what === 0) return addNode(graph, pick(KINDS, a)).graph;
    if (what === 1) return removeNode(graph, nodeKinds, pick(graph.nodes, a).id);
    if (what === 2) return setBypassed(graph, pick(graph.nodes, a).id, b % 2 === 0);
    if (what === 3 && !noWires) return disconnect(graph, pick(graph.wires, a));
    if (what === 4 && !noWires)
      return or(insertOnWire(graph, nodeKinds, pick(graph.wires, a), pick(KINDS, b)));
    const outputs = ends(graph, 'outputs');
    const inputs = ends(graph, 'inputs');
    if (outputs.length === 0 || inputs.length === 0) return graph;
    return or(connect(graph, nodeKinds, pick(outputs, a), pick(inputs, b)));
  }

  it('leaves a graph that can be checked', () => {
    const number = fc.nat(10_000);
    const step = fc.tuple(fc.nat(9), number, number);
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const graph = steps.reduce(edited, GRAPH);
        checkGraph(graph, nodeKinds);
      }),
    );
  });
});
