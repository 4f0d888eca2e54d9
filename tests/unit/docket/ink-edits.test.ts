import { describe, expect, it } from 'vitest';
import {
  addInk,
  addPlate,
  changeInk,
  deliveredInkSet,
  type InkSetSettings,
  inkSetFor,
  movePlate,
  readInkSet,
  removeInk,
  setPass,
} from '../../../src/docket/ink-edits.ts';
import { platesOf } from '../../../src/docket/use-plates.ts';
import { defaultGraph } from '../../../src/graph/default-graph.ts';
import { inkSet } from '../../../src/nodes/ink-set.ts';

const SET: InkSetSettings = inkSet.settings.parse({
  inks: [
    { id: 'pantile', name: 'Pantile', lab: [66, 40, 49] },
    { id: 'damson', name: 'Damson', hex: '#6b3463' },
  ],
  plates: [
    { id: 'pantile', ink: 'pantile', pass: 1 },
    { id: 'damson', ink: 'damson', pass: 1 },
    { id: 'damson-2', ink: 'damson', pass: 2 },
  ],
});
const told = (plates: readonly { id: string; pass: number }[]) =>
  plates.map(({ id, pass }) => `${id} ${pass}`);

describe('moving a plate', () => {
  it('leaves the passes at their places, so that they never fall', () => {
    expect(told(movePlate(SET.plates, 2, 0))).toEqual(['damson-2 1', 'pantile 1', 'damson 2']);
    expect(told(movePlate(SET.plates, 0, 1))).toEqual(['damson 1', 'pantile 1', 'damson-2 2']);
  });

  it('gives back the same list when nothing moves', () => {
    expect(movePlate(SET.plates, 1, 1)).toBe(SET.plates);
    expect(movePlate(SET.plates, 2, 3)).toBe(SET.plates);
  });
});

describe('another pass', () => {
  it('takes the later plates along', () => {
    expect(told(setPass(SET.plates, 0, 2))).toEqual(['pantile 2', 'damson 2', 'damson-2 2']);
  });

  it('takes the earlier plates along', () => {
    const plates = setPass(SET.plates, 0, 3);
    expect(told(setPass(plates, 2, 1))).toEqual(['pantile 1', 'damson 1', 'damson-2 1']);
  });
});

describe('inks', () => {
  it('come with a plate in a pass of its own and with ids of their own', () => {
    const { inks, plates } = addInk(SET, 'Damson', [20, 0, 0]);
    expect(inks.at(-1)).toMatchObject({ id: 'damson-3', name: 'Damson' });
    expect(plates.at(-1)).toEqual({ id: 'damson-3', ink: 'damson-3', pass: 3 });
    expect(inkSet.settings.safeParse({ inks, plates }).success).toBe(true);
  });

  it('get an id even when their name has no plain letter', () => {
    expect(addInk(SET, '\u8d64', [20, 0, 0]).inks.at(-1)).toMatchObject({ id: 'ink' });
  });

  it('go with their plates, but never the last', () => {
    const left = removeInk(SET, 'damson');
    expect(left && told(left.plates)).toEqual(['pantile 1']);
    expect(removeInk({ ...SET, plates: SET.plates.slice(1) }, 'damson')).toBeNull();
  });

  it('keep one colour when it is given anew in the other notation', () => {
    expect(changeInk(SET.inks, 'damson', { lab: [30, 20, -10] })[1]).toEqual({
      id: 'damson',
      name: 'Damson',
      opacity: 0.005,
      lab: [30, 20, -10],
    });
    expect(changeInk(SET.inks, 'damson', { name: 'Plum' })[1]).toMatchObject({
      name: 'Plum',
      hex: '#6b3463',
    });
  });

  it('may print from several plates', () => {
    expect(addPlate(SET, 'pantile').at(-1)).toEqual({ id: 'pantile-2', ink: 'pantile', pass: 3 });
  });
});

describe('the ink set of a node', () => {
  const GRAPH = defaultGraph({}, {});
  const other = { id: 'other-inks', kind: 'ink-set', settings: {}, bypassed: false };
  const graph = { ...GRAPH, nodes: [other, ...GRAPH.nodes] };

  it('is the one that feeds it, not the first of the graph', () => {
    expect(inkSetFor(graph, 'plate-grain')?.id).toBe('ink-set');
    expect(deliveredInkSet(graph)?.id).toBe('ink-set');
  });

  it('is the first of the graph where none feeds it', () => {
    expect(inkSetFor(graph, 'line-drawing')?.id).toBe('other-inks');
    expect(inkSetFor({ nodes: [], wires: [] }, null)).toBeUndefined();
  });

  it('is nothing to read when its settings do not fit', () => {
    expect(readInkSet({ ...other, settings: { plates: [] } })).toBeNull();
    expect(platesOf({ ...other, settings: { plates: [] } })).toEqual([]);
  });

  it('names plates that share an ink apart', () => {
    const { inks, plates } = SET;
    const rows = platesOf({
      ...other,
      settings: { inks: inks.map((ink) => ({ ...ink })), plates },
    } as typeof other);
    expect(rows.map(({ name }) => name)).toEqual(['Pantile', 'Damson (damson)', 'Damson (damson-2)']);
  });
});
