import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Graph } from '../../../src/graph/job.ts';
import { topologicalOrder, upstreamOf, wireInto } from '../../../src/graph/order.ts';

/** A graph of nodes a, b, c.. and wires such as `a>b`. */
function graphOf(nodes: string, ...wires: string[]): Graph {
  return {
    nodes: [...nodes].map((id) => ({ id, kind: 'key-line', settings: {}, bypassed: false })),
    wires: wires.map((wire) => ({
      from: { node: wire[0]!, port: 'plates' },
      to: { node: wire[2]!, port: 'plates' },
    })),
  };
}

function orderOf(graph: Graph): string {
  const sorted = topologicalOrder(graph);
  if ('circle' in sorted) throw new Error(`a circle: ${sorted.circle.join()}`);
  return sorted.order.map((node) => node.id).join('');
}

function circleOf(graph: Graph): string {
  const sorted = topologicalOrder(graph);
  return 'circle' in sorted ? sorted.circle.join('') : 'none';
}

describe('topological order', () => {
  it('puts every node after all that feed it', () => {
    expect(orderOf(graphOf('dcba', 'a>b', 'b>c', 'c>d'))).toBe('abcd');
  });

  it('keeps the order of the document where no wire says otherwise', () => {
    expect(orderOf(graphOf('cab'))).toBe('cab');
    expect(orderOf(graphOf('cab', 'c>b'))).toBe('cab');
  });

  it('takes two ways from one node to another', () => {
    expect(orderOf(graphOf('dcba', 'a>b', 'a>c', 'b>d', 'c>d'))).toBe('acbd');
  });

  it('orders no nodes at all', () => {
    expect(orderOf(graphOf(''))).toBe('');
  });

  it('names the nodes of a circle along the wires, and none that merely hang on it', () => {
    const circle = circleOf(graphOf('xabcy', 'a>b', 'b>c', 'c>a', 'c>y', 'x>a'));
    expect(['abc', 'bca', 'cab']).toContain(circle);
  });

  it('finds a circle upstream of the first node that waits', () => {
    expect(['bc', 'cb']).toContain(circleOf(graphOf('abc', 'b>a', 'b>c', 'c>b')));
  });

  it('finds a node that feeds itself', () => {
    expect(circleOf(graphOf('ab', 'b>b'))).toBe('b');
  });

  it('orders any graph whose wires run one way', () => {
    const nodes = 'abcdefgh';
    const oneWay = fc
      .tuple(fc.nat(7), fc.nat(7))
      .filter(([a, b]) => a < b)
      .map(([a, b]) => `${nodes[a]}>${nodes[b]}`);
    const order = fc.shuffledSubarray([...nodes], { minLength: 8 });
    fc.assert(
      fc.property(fc.array(oneWay), order, (wires, document) => {
        const found = orderOf(graphOf(document.join(''), ...wires));
        expect([...found].sort().join('')).toBe(nodes);
        for (const wire of wires) expect(found.indexOf(wire[0]!)).toBeLessThan(found.indexOf(wire[2]!));
      }),
    );
  });
});

describe('upstream', () => {
  const graph = graphOf('abcd', 'a>b', 'b>c', 'd>c');

  it('is all that feeds a node, and itself', () => {
    expect([...upstreamOf(graph, 'b')].sort()).toEqual(['a', 'b']);
    expect([...upstreamOf(graph, 'c')].sort()).toEqual(['a', 'b', 'c', 'd']);
  });

  it('comes to an end on a circle', () => {
    expect([...upstreamOf(graphOf('ab', 'a>b', 'b>a'), 'a')].sort()).toEqual(['a', 'b']);
  });

  it('is the wire of an input, if it has one', () => {
    expect(wireInto(graph, 'b', 'plates')?.from.node).toBe('a');
    expect(wireInto(graph, 'a', 'plates')).toBeUndefined();
    expect(wireInto(graph, 'b', 'area')).toBeUndefined();
  });
});
