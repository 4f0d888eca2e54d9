import { describe, expect, it } from 'vitest';
import { withCurves, withFindings, withReadings } from '../../../src/app/inks/press-test.ts';
import { withInks } from '../../../src/app/inks/shelf-store.ts';
import { curveText, readCurve } from '../../../src/docket/curve-text.ts';
import type { Ink, Measurement } from '../../../src/graph/inks.ts';
import { DEMO_SHELF } from '../../../src/ink/demo-inks.ts';
import { freshId } from '../../../src/store/edits.ts';
import { defaultJob } from '../support/jobs.ts';

describe('inks put on the shelf', () => {
  it('come once, under an id that is free', () => {
    const [first] = DEMO_SHELF.inks;
    const other: Ink = { id: first!.id, name: 'Rain tub', lab: [40, -20, -10], opacity: 0.01 };
    const shelf = withInks(DEMO_SHELF, [first!, other], freshId);
    expect(shelf.inks).toHaveLength(DEMO_SHELF.inks.length + 1);
    expect(shelf.inks.at(-1)).toEqual({ ...other, id: `${first!.id}-2` });
  });

  it('change nothing when all are there already', () => {
    expect(withInks(DEMO_SHELF, DEMO_SHELF.inks, freshId)).toBe(DEMO_SHELF);
  });
});

describe('what a press test found', () => {
  const read = (inks: string[], how: Measurement['how'], l: number): Measurement => ({
    inks,
    lab: [l, 0, 0],
    how,
  });

  it('takes the place of readings of the same overprint made the same way, and of no others', () => {
    const before = [
      read(['a'], 'instrument', 40),
      read(['a'], 'photo', 42),
      read(['a', 'b'], 'instrument', 30),
    ];
    expect(withReadings(before, [read(['b', 'a'], 'instrument', 31)])).toEqual([
      before[0],
      before[1],
      read(['b', 'a'], 'instrument', 31),
    ]);
  });

  it('gives inks their curve in place of what was said of their gain', () => {
    const ink: Ink = { id: 'a', name: 'A', lab: [50, 0, 0], opacity: 0, gain: 0.1 };
    expect(withCurves([ink], { a: [[50, 62]] })).toEqual([
      { id: 'a', name: 'A', lab: [50, 0, 0], opacity: 0, curvePercent: [[50, 62]] },
    ]);
  });

  const settings = (measured: Measurement[]) => {
    const found = withFindings(defaultJob({}), { measured, curves: { straw: [[50, 62]] }, doubts: [] });
    return found.graph.nodes.find(({ kind }) => kind === 'ink-set')!.settings;
  };

  it('enters the Ink set, curves too, when an instrument read it', () => {
    const { measured, inks } = settings([read(['straw'], 'instrument', 84)]);
    expect(measured).toEqual([read(['straw'], 'instrument', 84)]);
    expect((inks as Ink[])[0]!.curvePercent).toEqual([[50, 62]]);
  });

  it('enters as a hint when a photo was read: not accepted, and no curve', () => {
    const { measured, inks } = settings([read(['straw'], 'photo', 84)]);
    expect(measured).toEqual([read(['straw'], 'photo', 84)]);
    expect((inks as Ink[])[0]).not.toHaveProperty('curvePercent');
  });
});

describe('a film-to-print curve as text', () => {
  it('comes back as it was written', () => {
    const curve: [number, number][] = [
      [10, 6],
      [50, 45],
      [90, 92],
    ];
    expect(readCurve(curveText(curve))).toEqual(curve);
  });

  it.each([
    [
      '10:6; 50/45',
      [
        [10, 6],
        [50, 45],
      ],
    ],
    [
      '10 > 6\n50 > 45',
      [
        [10, 6],
        [50, 45],
      ],
    ],
    ['', undefined],
    ['50 45, 10 6', null],
    ['50', null],
    ['50 120', null],
    ['many', null],
  ])('%j is %j', (text, curve) => {
    expect(readCurve(text)).toEqual(curve);
  });
});
