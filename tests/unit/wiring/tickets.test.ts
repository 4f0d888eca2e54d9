import { describe, expect, it } from 'vitest';
import { defaultGraph } from '../../../src/graph/default-graph.ts';
import type { Graph, GraphNode } from '../../../src/graph/job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { complaintsByNode } from '../../../src/wiring/complaints.ts';
import { searchKinds } from '../../../src/wiring/search-kinds.ts';
import { shapeOf } from '../../../src/wiring/shape.ts';
import { summaryOf } from '../../../src/wiring/summary.ts';
import { shownTime } from '../../../src/wiring/times.ts';

const HASH = 'a'.repeat(64);

function summary(kind: string, settings: GraphNode['settings'] = {}): string {
  const node = { id: kind, kind, settings, bypassed: false };
  return summaryOf(node, nodeKinds.get(kind)!, { [HASH]: { file: 'harvest.svg' } });
}

describe('the summary of a ticket', () => {
  it('names the settings that differ from usual', () => {
    expect(summary('plate-grain', { sizeMm: 0.5, hardness: 15 })).toBe('size 0.5\u00a0mm');
  });

  it('names the first settings where none differs', () => {
    expect(summary('plate-grain')).toBe('mottle \u00b7 size 0.35\u00a0mm');
  });

  it('names the file of a drawing and the plates of an ink set', () => {
    expect(summary('line-drawing', { asset: HASH })).toMatch(/^harvest\.svg/);
    expect(summary('ink-set', { plates: [{ id: 'a', ink: 'a', pass: 1 }] })).toBe('1 plate');
  });

  it('is empty for a node without settings', () => {
    expect(summary('fill-plates')).toBe('');
  });
});

describe('complaints', () => {
  const GRAPH = defaultGraph({}, {});
  const warning = (code: string, message: string) => ({ code, message, severity: 'warning' as const });
  const of = (graph: Graph, told: Record<string, ReturnType<typeof warning>[]> = {}) =>
    complaintsByNode(graph, nodeKinds, told);

  it('stand at the node that had them to say', () => {
    const found = of(GRAPH, { 'line-drawing': [warning('size-assumed', 'x.png: 300 ppi are assumed')] });
    expect(found.get('line-drawing')).toHaveLength(1);
    expect(found.get('press-file')).toEqual([]);
  });

  it('are not told twice: why a node cannot run goes without saying where its input is open', () => {
    const open = { ...GRAPH, wires: GRAPH.wires.filter(({ to }) => to.port !== 'paper') };
    const found = of(open, { proof: [warning('cannot-run', 'nothing is wired to its input')] });
    expect(found.get('proof')).toHaveLength(1);
  });

  it('tell of an input that nothing is wired to, as an error only where it holds up the print', () => {
    const open = { ...GRAPH, wires: GRAPH.wires.filter(({ to }) => to.port !== 'paper') };
    expect(of(open).get('proof')).toMatchObject([
      { severity: 'error', message: 'Proof has nothing wired to its input "paper".' },
    ]);
    const lone = { id: 'spare', kind: 'plate-grain', settings: {}, bypassed: false };
    const spare = of({ ...GRAPH, nodes: [...GRAPH.nodes, lone] }).get('spare');
    expect(spare).toMatchObject([{ severity: 'note' }]);
  });

  it('tell of settings that do not fit', () => {
    const nodes = GRAPH.nodes.map((node) =>
      node.id === 'plate-grain' ? { ...node, settings: { sizeMm: 99 } } : node,
    );
    expect(of({ ...GRAPH, nodes }).get('plate-grain')).toMatchObject([{ code: 'settings' }]);
  });
});

describe('searching kinds', () => {
  const found = (typed: string) => searchKinds([...nodeKinds.values()], typed).map(({ kind }) => kind);

  it('finds those whose title or help holds every word', () => {
    expect(found('grain')).toEqual(['plate-grain']);
    expect(found('Plates  ink')).toContain('ink-set');
    expect(found('zeppelin')).toEqual([]);
  });

  it('finds all while nothing is typed', () => {
    expect(found('  ')).toHaveLength(nodeKinds.size);
  });
});

describe('the shape of a graph', () => {
  it('stays the same object while only settings change', () => {
    const graph = defaultGraph({}, {});
    const nodes = graph.nodes.map((node) => ({ ...node, settings: { seed: 2 } }));
    expect(shapeOf({ ...graph, nodes })).toBe(shapeOf(graph));
    expect(shapeOf({ ...graph, wires: [] })).not.toBe(graph);
  });
});

describe('a time', () => {
  it('is shown in tenths of a second when it is worth telling', () => {
    expect([shownTime(1234), shownTime(49), shownTime(undefined)]).toEqual(['1.2', null, null]);
  });
});
