import { describe, expect, it } from 'vitest';
import { defaultGraph } from '../../../src/graph/default-graph.ts';
import type { Graph, Wire } from '../../../src/graph/job.ts';
import { bypassInput, checkGraph, lintGraph, missingInputs, whyNot } from '../../../src/graph/wiring.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';

const GRAPH = defaultGraph({}, {});

const end = (text: string) => {
  const [node, port] = text.split('.');
  return { node: node!, port: port! };
};
const why = (from: string, to: string, graph = GRAPH) => whyNot(graph, nodeKinds, end(from), end(to));
const node = (id: string, graph = GRAPH) => graph.nodes.find((other) => other.id === id)!;

/** The graph with the wire into an input coming from somewhere else. */
function rewired(graph: Graph, to: string, from: string): Graph {
  const same = (wire: Wire) => `${wire.to.node}.${wire.to.port}` === to;
  const wires = graph.wires.filter((wire) => !same(wire));
  return { ...graph, wires: [...wires, { from: end(from), to: end(to) }] };
}

describe('a wire', () => {
  it('may join an output to an input of the same type', () => {
    expect(why('line-drawing.drawing', 'key-line.drawing')).toBeNull();
    expect(why('fill-plates.plates', 'press-file.plates')).toBeNull();
  });

  it('may not join unlike types, and the reason names both', () => {
    expect(why('ink-set.inks', 'proof.paper')).toBe(
      'Ink set gives inks, but the input "paper" of Proof takes paper',
    );
  });

  it('may not run in a circle, and the reason names both nodes', () => {
    expect(why('plate-grain.plates', 'key-line.plates')).toMatch(
      /Key line \("key-line"\) already feeds Plate grain \("plate-grain"\).*circle/,
    );
  });

  it('may not run from a node into itself', () => {
    expect(why('key-line.plates', 'key-line.plates')).toMatch(/circle/);
  });

  it('may not begin or end at a node or port that is not there', () => {
    expect(why('ghost.plates', 'proof.plates')).toMatch(/no node "ghost"/);
    expect(why('key-line.plates', 'ghost.plates')).toMatch(/no node "ghost"/);
    expect(why('press-file.plates', 'proof.plates')).toMatch(/no output "plates"; it has none/);
    expect(why('key-line.plates', 'proof.toString')).toMatch(/no input "toString"; it has plates, paper/);
  });
});

describe('the default graph', () => {
  it('can run and has nothing to complain of', () => {
    expect(() => checkGraph(GRAPH, nodeKinds)).not.toThrow();
    expect(lintGraph(GRAPH, nodeKinds)).toEqual([]);
  });

  it('leaves no input open that needs a wire', () => {
    for (const each of GRAPH.nodes) expect(missingInputs(GRAPH, nodeKinds.get(each.kind)!, each)).toEqual([]);
  });

  it('holds every kind of node that works with default settings', () => {
    for (const each of GRAPH.nodes)
      expect(nodeKinds.get(each.kind)!.settings.safeParse(each.settings).success).toBe(true);
  });

  it('names an input that lost its wire, unless it is optional', () => {
    const bare = { ...GRAPH, wires: [] };
    const missing = (id: string) => missingInputs(bare, nodeKinds.get(id)!, node(id));
    expect(missing('key-line')).toEqual(['plates', 'drawing']);
    expect(missing('region-tints')).toEqual(['regions', 'inks']);
    expect(missing('ink-set')).toEqual([]);
  });
});

describe('a simulation upstream of Press file', () => {
  const delivered = rewired(GRAPH, 'press-file.plates', 'register-offset.plates');

  it('is an error that names both nodes', () => {
    const [complaint, ...others] = lintGraph(delivered, nodeKinds);
    expect(others).toEqual([]);
    expect(complaint).toMatchObject({ code: 'simulation-delivered', severity: 'error' });
    expect(complaint!.message).toMatch(/Register offset \("register-offset"\).*Press file \("press-file"\)/);
  });

  it('is found however far upstream it is', () => {
    const far = rewired(
      rewired(GRAPH, 'key-line.plates', 'register-offset.plates'),
      'register-offset.plates',
      'fill-plates.plates',
    );
    expect(() => checkGraph(far, nodeKinds)).not.toThrow();
    expect(lintGraph(far, nodeKinds).map(({ code }) => code)).toEqual(['simulation-delivered']);
  });

  it('is none when it is bypassed', () => {
    const nodes = delivered.nodes.map((each) => ({ ...each, bypassed: each.id === 'register-offset' }));
    expect(lintGraph({ ...delivered, nodes }, nodeKinds)).toEqual([]);
  });

  it('is none when it only leads to the proof', () => {
    expect(lintGraph(rewired(GRAPH, 'proof.plates', 'register-offset.plates'), nodeKinds)).toEqual([]);
  });
});

describe('a bypassed node', () => {
  it.each([
    ['clean-line', 'drawing', 'drawing'],
    ['key-line', 'plates', 'plates'],
    ['plate-grain', 'plates', 'plates'],
    ['register-offset', 'plates', 'plates'],
  ])('of kind %s hands on as its %s the input %s', (kind, output, input) => {
    expect(bypassInput(nodeKinds.get(kind)!, output)).toBe(input);
  });

  it('of a kind that makes its output itself has nothing to hand on', () => {
    expect(bypassInput(nodeKinds.get('closed-regions')!, 'regions')).toBeNull();
    expect(bypassInput(nodeKinds.get('fill-plates')!, 'plates')).toBeNull();
    expect(bypassInput(nodeKinds.get('ink-set')!, 'inks')).toBeNull();
  });
});
