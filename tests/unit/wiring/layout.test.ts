import { describe, expect, it } from 'vitest';
import { defaultGraph } from '../../../src/graph/default-graph.ts';
import type { Graph } from '../../../src/graph/job.ts';
import { flowOrder, layersOf } from '../../../src/wiring/layers.ts';
import { layoutOf } from '../../../src/wiring/layout.ts';
import { lastMiddle, strandPath } from '../../../src/wiring/strand-path.ts';

const GRAPH = defaultGraph({}, {});
const MEASURES = { width: 100, height: 40, aside: 10, below: 20, lane: 8 };

/** A graph from lines such as `a>b`; a name alone is a node without wires. */
function graphOf(...lines: string[]): Graph {
  const names = [...new Set(lines.flatMap((line) => line.split('>')))];
  return {
    nodes: names.map((id) => ({ id, kind: id, settings: {}, bypassed: false })),
    wires: lines
      .filter((line) => line.includes('>'))
      .map((line) => {
        const [from, to] = line.split('>') as [string, string];
        return { from: { node: from, port: 'out' }, to: { node: to, port: from } };
      }),
  };
}

describe('layers', () => {
  it('put every node below all that feed it, at the end of the longest run', () => {
    const layers = layersOf(graphOf('a>b', 'b>c', 'a>c'));
    expect(Object.fromEntries(layers)).toEqual({ a: 0, b: 1, c: 2 });
  });

  it('put what nothing feeds just above what it feeds', () => {
    const layers = layersOf(GRAPH);
    expect(layers.get('paper-stock')).toBe(layers.get('proof')! - 1);
    expect(layers.get('ink-set')).toBe(layers.get('region-tints')! - 1);
  });

  it('put a node without wires below all others', () => {
    expect(Object.fromEntries(layersOf(graphOf('lone', 'a>b')))).toEqual({ a: 0, b: 1, lone: 2 });
  });

  it('hold all nodes even where the wires run in a circle', () => {
    expect(Object.fromEntries(layersOf(graphOf('a>b', 'b>a')))).toEqual({ a: 0, b: 0 });
  });

  it('give the order of the strip from the drawing to the proof', () => {
    expect(flowOrder(GRAPH)).toEqual([
      'line-drawing',
      'clean-line',
      'closed-regions',
      'ink-set',
      'region-tints',
      'fill-plates',
      'key-line',
      'plate-grain',
      'press-file',
      'register-offset',
      'paper-stock',
      'proof',
    ]);
  });
});

describe('the layout', () => {
  it('stacks a plain run straight', () => {
    const { places } = layoutOf(graphOf('a>b', 'b>c'), MEASURES);
    expect([...places.values()]).toEqual([
      { x: -50, y: 0 },
      { x: -50, y: 60 },
      { x: -50, y: 120 },
    ]);
  });

  it('keeps the tickets of a layer apart', () => {
    const { places } = layoutOf(GRAPH, MEASURES);
    const list = [...places.values()];
    for (const [i, a] of list.entries())
      for (const b of list.slice(i + 1))
        if (a.y === b.y)
          expect(Math.abs(a.x - b.x)).toBeGreaterThanOrEqual(MEASURES.width + MEASURES.aside - 1);
  });

  it('leads a wire that passes a layer beside the tickets there', () => {
    const graph = graphOf('a>b', 'b>c', 'a>c');
    const { places, ways } = layoutOf(graph, MEASURES);
    expect(ways[0]).toEqual([]);
    const [into, out] = ways[2]!;
    expect([into!.y, out!.y]).toEqual([60, 100]);
    const b = places.get('b')!;
    expect(into!.x < b.x || into!.x > b.x + MEASURES.width).toBe(true);
  });

  it('is the same for the same graph', () => {
    expect(layoutOf(GRAPH, MEASURES)).toEqual(layoutOf(structuredClone(GRAPH), MEASURES));
  });
});

describe('a strand', () => {
  const points = [
    { x: 0, y: 0 },
    { x: 20, y: 40 },
  ];

  it('leaves and enters upright', () => {
    expect(strandPath(points, 0)).toBe('M0 0C0 20 20 20 20 40');
  });

  it('keeps its distance from its neighbour where it runs sideways', () => {
    expect(strandPath(points, 4)).toBe('M4 0C4 16 24 16 24 40');
    expect(strandPath(points, -4)).toBe('M-4 0C-4 24 16 24 16 40');
  });

  it('has its middle in the last bend', () => {
    expect(lastMiddle([{ x: 9, y: 9 }, ...points])).toEqual({ x: 10, y: 20 });
  });
});
