import { describe, expect, it } from 'vitest';
import type { RegionEdit } from '../../../src/graph/region-edits.ts';
import { complaintsByEdit, middleOf } from '../../../src/view/region-tools/edit-places.ts';
import { inSight, shapeOf } from '../../../src/view/region-tools/mark-shapes.ts';
import { markText } from '../../../src/view/region-tools/mark-text.ts';
import { type Mark, marksOf, nearestMark } from '../../../src/view/region-tools/marks.ts';
import { actsOn } from '../../../src/view/region-tools/place-tools.ts';
import { mapOf } from './maps.ts';

/** Two rooms with a door of 0.31 mm between them, and an open gap below. */
const map = {
  ...mapOf('1111222', '1111222', '1111222'),
  walls: [
    {
      widthMm: 0.31,
      placeMm: [4, 1] as [number, number],
      endsMm: [
        [4, 0.845],
        [4, 1.155],
      ] as [[number, number], [number, number]],
      between: ['r1', 'r2'] as [string, string],
      opened: false,
    },
  ],
  openGaps: [{ widthMm: 1.2, partsMm2: 34, placeMm: [2, 2.5] as [number, number] }],
};
const opening: RegionEdit = { id: 'e1', does: 'open-wall', atMm: [4, 1] };
const drawn: RegionEdit = {
  id: 'e2',
  does: 'draw-wall',
  pathMm: [
    [0, 0],
    [2, 0],
    [2, 2],
  ],
};
const joined: RegionEdit = { id: 'e3', does: 'join', fromMm: [1, 1], toMm: [6, 1] };
const keys = (marks: readonly Mark[]) => marks.map(({ key }) => key);

describe('marks of the regions', () => {
  it('are walls, gaps and hand edits', () => {
    expect(keys(marksOf(map, [drawn, joined]))).toEqual(['wall 0', 'gap 0', 'edit e2', 'edit e3']);
  });

  it('show a wall as opened from the moment it is opened by hand', () => {
    expect(marksOf(map, [opening])).toMatchObject([
      { is: 'wall', openedBy: 'e1', key: 'edit e1' },
      { is: 'gap' },
    ]);
  });

  it('keep an opening for itself where no wall stands', () => {
    const lost: RegionEdit = { ...opening, atMm: [1.5, 2.9] };
    expect(marksOf(map, [lost])).toMatchObject([{ is: 'wall', openedBy: null }, {}, { is: 'edit' }]);
  });

  it('are found within reach, the nearest first, and only those that may be', () => {
    const marks = marksOf(map, [drawn, joined]);
    expect(nearestMark(marks, { x: 4.2, y: 1.4 }, 0.5)?.key).toBe('wall 0');
    expect(nearestMark(marks, { x: 4.2, y: 0.95 }, 0.5)?.key).toBe('edit e3');
    expect(nearestMark(marks, { x: 1, y: 0.2 }, 0.5)?.key).toBe('edit e2');
    expect(nearestMark(marks, { x: 6, y: 2.6 }, 0.5)).toBeNull();
    expect(nearestMark(marks, { x: 4, y: 1 }, 0.5, (mark) => actsOn('open-wall', mark))?.key).toBe('wall 0');
  });

  it('say how wide they are and what a click does', () => {
    const [wall, gap] = marksOf(map, []);
    expect(markText(wall!, 'open-wall')).toBe('0.31 mm opening, closed. Click to open it.');
    expect(markText(wall!, 'tint')).toBe('0.31 mm opening, closed. Open wall takes it down.');
    expect(markText(marksOf(map, [opening])[0]!, 'open-wall')).toBe(
      '0.31 mm opening, opened by hand. Click to close it again.',
    );
    expect(markText(gap!, 'open-wall')).toBe(
      '1.20 mm opening, wider than the gap: open. Draw wall across it parts off about 34 mm².',
    );
    expect(markText(marksOf(map, [drawn])[2]!, 'open-wall')).toBe(
      'Wall drawn by hand. Click to take it away.',
    );
  });

  it('differ in shape, and a wall of a hair is drawn no shorter than can be seen', () => {
    const far = { x: 0, y: 0, pxPerMm: 3 };
    const [closed] = marksOf(map, []).map((mark) => shapeOf(mark, far).line);
    const [opened, gap] = marksOf(map, [opening]).map((mark) => shapeOf(mark, far).line);
    expect(new Set([closed, opened, gap]).size).toBe(3);
    const downs = [...closed!.matchAll(/[ML][\d.]+ (-?[\d.]+)/g)].map(([, y]) => Number(y));
    expect(Math.max(...downs) - Math.min(...downs)).toBeCloseTo(12, 6);
  });

  it('are drawn only where the view has them', () => {
    const [wall] = marksOf(map, []);
    const desk = { width: 100, height: 100 };
    expect(inSight(wall!, { x: 0, y: 0, pxPerMm: 10 }, desk)).toBe(true);
    expect(inSight(wall!, { x: 0, y: 0, pxPerMm: 40 }, desk)).toBe(false);
  });
});

describe('places of hand edits', () => {
  it('lie half way along a path', () => {
    expect(
      middleOf([
        { x: 0, y: 0 },
        { x: 2, y: 0 },
        { x: 2, y: 6 },
      ]),
    ).toEqual({ x: 2, y: 2 });
    expect(middleOf([{ x: 3, y: 3 }])).toEqual({ x: 3, y: 3 });
  });

  it('tell which edit a complaint means; others and far ones mean none', () => {
    const fault = (code: string, placeMm: [number, number]) => ({
      code,
      severity: 'warning' as const,
      message: code,
      placeMm,
    });
    const found = complaintsByEdit(
      [opening, drawn],
      [fault('edit-no-wall', [2, 0.1]), fault('other', [4, 1]), fault('edit-lost', [9, 9])],
    );
    expect([...found].map(([id, { code }]) => [id, code])).toEqual([['e2', 'edit-no-wall']]);
  });
});
