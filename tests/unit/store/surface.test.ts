import { describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { topologicalOrder, upstreamOf } from '../../../src/graph/order.ts';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import {
  areaAtHand,
  areaSettings,
  areaTargets,
  withArea,
  withLineNear,
  withoutShape,
  withRegions,
  withShape,
  withShapeMoved,
} from '../../../src/store/areas.ts';
import { hasFade, recipeOf, withRecipe, withSetting } from '../../../src/store/edits.ts';
import { fadesOf, withFade } from '../../../src/store/fades.ts';
import { marksAtHand, marksOf, withHandMarks, withMark, withMarks } from '../../../src/store/hand-marks.ts';
import { offsetOf, registerNode, withNudge, withRegister } from '../../../src/store/nudge.ts';
import { removeNode } from '../../../src/wiring/graph-edits.ts';
import { defaultJob } from '../support/jobs.ts';

const job = (): Job => defaultJob({ asset: 'a'.repeat(64), ppi: 300 });
const without = (before: Job, id: string): Job => ({
  ...before,
  graph: removeNode(before.graph, nodeKinds, id),
});
const SQUARE = [
  [1, 1],
  [5, 1],
  [5, 5],
  [1, 5],
] as const;
/** The document as it would be saved and read. */
const reread = (now: Job): Job =>
  parseJob(JSON.stringify({ ...now, assets: { ['a'.repeat(64)]: { file: 'a.png' } } }), nodeKinds);
const orderOf = ({ graph }: Job) => {
  const sorted = topologicalOrder(graph);
  return 'order' in sorted ? sorted.order.map(({ id }) => id) : [];
};

describe('an area made on the print', () => {
  it('lies over drawing and regions, and the step that was named keeps to it', () => {
    const made = withArea(job(), 'plate-grain')!;
    const wires = made.job.graph.wires.filter(({ from, to }) => [from.node, to.node].includes(made.node));
    expect(wires).toEqual([
      { from: { node: 'clean-line', port: 'drawing' }, to: { node: 'area', port: 'drawing' } },
      { from: { node: 'closed-regions', port: 'regions' }, to: { node: 'area', port: 'regions' } },
      { from: { node: 'area', port: 'area' }, to: { node: 'plate-grain', port: 'area' } },
    ]);
    expect(reread(made.job).graph).toEqual(made.job.graph);
  });

  it('is offered for steps that keep to none yet, the last on the way first', () => {
    expect(areaTargets(job()).map(({ id }) => id)).toEqual(['plate-grain', 'key-line']);
    expect(areaTargets(withArea(job(), 'plate-grain')!.job).map(({ id }) => id)).toEqual(['key-line']);
  });

  it('cannot be made in a job without regions', () => {
    expect(withArea(without(job(), 'closed-regions'), 'plate-grain')).toBeNull();
  });

  it('takes shapes, lines and regions, each under an id of its own, and gives them up again', () => {
    const { job: made, node } = withArea(job(), 'plate-grain')!;
    const filled = withRegions(
      withLineNear(withShape(withShape(made, node, SQUARE), node, SQUARE), node, [[2, 2]], 3),
      node,
      ['r1', 'r2'],
      true,
    );
    const settings = areaSettings(areaAtHand(reread(filled), null)!);
    expect(settings.shapes.map(({ id }) => id)).toEqual(['s1', 's2']);
    expect(settings.lines).toEqual([{ id: 's3', pathMm: [[2, 2]], withinMm: 3 }]);
    expect(settings.regions).toEqual(['r1', 'r2']);
    const fewer = withRegions(
      withoutShape(withoutShape(filled, node, 's1'), node, 's3'),
      node,
      ['r1'],
      false,
    );
    const left = areaSettings(areaAtHand(fewer, null)!);
    expect([left.shapes.map(({ id }) => id), left.lines, left.regions]).toEqual([['s2'], [], ['r2']]);
  });

  it('moves one shape and leaves the others', () => {
    const { job: made, node } = withArea(job(), 'plate-grain')!;
    const two = withShape(withShape(made, node, SQUARE), node, SQUARE);
    const moved = areaSettings(areaAtHand(withShapeMoved(two, node, 's2', [0.1, -1]), null)!);
    expect(moved.shapes.map(({ pathMm }) => pathMm[0])).toEqual([
      [1, 1],
      [1.1, 0],
    ]);
  });
});

describe('hand marks', () => {
  const MARK = {
    does: 'lay',
    plates: [],
    tintPercent: 40,
    widthMm: 2,
    edge: 'dry',
    points: [[1, 2, 0.5]],
  } as const;
  const mark = () => ({ ...MARK, plates: [], points: [[1, 2, 0.5]] as [number, number, number][] });

  it('are put in between the line and the grain', () => {
    const put = withHandMarks(job().graph)!;
    const order = orderOf({ ...job(), graph: put.graph });
    expect(put.before).toBe('Plate grain');
    expect(order.indexOf('hand-marks')).toBeGreaterThan(order.indexOf('key-line'));
    expect(order.indexOf('hand-marks')).toBeLessThan(order.indexOf('plate-grain'));
    for (const end of ['press-file', 'proof']) expect(upstreamOf(put.graph, end)).toContain('hand-marks');
    expect(reread({ ...job(), graph: put.graph }).graph).toEqual(put.graph);
  });

  it('come after the line where there is no grain, before everything that takes its plates', () => {
    const put = withHandMarks(without(job(), 'plate-grain').graph)!;
    expect(put.after).toBe('Key line');
    for (const end of ['press-file', 'proof']) expect(upstreamOf(put.graph, end)).toContain('hand-marks');
  });

  it('have no place where no plates run', () => {
    expect(withHandMarks({ nodes: [], wires: [] })).toBeNull();
  });

  it('are numbered on, and none takes the number of one that went', () => {
    const { graph, node } = withHandMarks(job().graph)!;
    const three = [1, 2, 3].reduce((now) => withMark(now, node, mark()), { ...job(), graph });
    const two = withMarks(three, node, (all) => all.filter(({ id }) => id !== 'm2'));
    const again = withMark(two, node, mark());
    expect(marksOf(marksAtHand(reread(again), null)!).map(({ id }) => id)).toEqual(['m1', 'm3', 'm4']);
  });
});

describe('a fade', () => {
  const FADE = {
    shape: 'linear' as const,
    from: { straw: 20 },
    to: { straw: 80 },
    pathMm: [
      [0, 0],
      [10, 0],
    ] as [number, number][],
  };

  it('belongs to the colourway in use, and goes when the region is tinted', () => {
    const faded = withFade(job(), 'r1', FADE);
    expect(reread(faded).colourways[0]!.fades).toEqual({ r1: FADE });
    expect(hasFade(faded, 'r1')).toBe(true);
    const tinted = withRecipe(faded, ['r1'], { straw: 50 });
    expect([fadesOf(tinted), recipeOf(tinted, 'r1')]).toEqual([{}, { straw: 50 }]);
    expect('fades' in tinted.colourways[0]!).toBe(false);
  });
});

describe('a nudged plate', () => {
  const STILL = { alongMm: 0, acrossMm: 0 };
  const nudged = (feedEdge: string, move: [number, number]) => {
    const set = withSetting(job(), 'register-offset', 'feedEdge', feedEdge);
    return offsetOf(registerNode(withNudge(set, 'register-offset', 'straw', STILL, move))!, 'straw');
  };

  it.each([
    ['top', { alongMm: 2, acrossMm: 1 }],
    ['bottom', { alongMm: -2, acrossMm: 1 }],
    ['left', { alongMm: 1, acrossMm: 2 }],
    ['right', { alongMm: -1, acrossMm: 2 }],
  ])('moves as the hand does, whichever edge is fed first: %s', (feedEdge, wanted) => {
    expect(nudged(feedEdge, [1, 2])).toMatchObject(wanted);
  });

  it('keeps its turn and stretch, and stays within 20 mm', () => {
    const turned = withSetting(job(), 'register-offset', 'offsets', {
      straw: { rotationDeg: 1, stretchMm: 2 },
    });
    const far = withNudge(turned, 'register-offset', 'straw', STILL, [0, 50]);
    expect(offsetOf(registerNode(far)!, 'straw')).toEqual({
      alongMm: 20,
      acrossMm: 0,
      rotationDeg: 1,
      stretchMm: 2,
    });
  });

  it('shows where offsets were by chance alone, or bypassed', () => {
    const chance = withSetting(job(), 'register-offset', 'how', 'by-chance');
    const node = registerNode(withNudge(chance, 'register-offset', 'straw', STILL, [1, 0]))!;
    expect(node).toMatchObject({ bypassed: false, settings: { how: 'both' } });
  });

  it('gets a Register offset before the proof, and never before the press file', () => {
    const bare = without(job(), 'register-offset');
    expect(registerNode(bare)).toBeUndefined();
    const put = withRegister(bare.graph)!;
    expect(upstreamOf(put.graph, 'proof')).toContain(put.node);
    expect(upstreamOf(put.graph, 'press-file')).not.toContain(put.node);
    expect(reread({ ...bare, graph: put.graph }).graph).toEqual(put.graph);
  });
});
