import { expect, test } from 'vitest';
import { marksOf } from '../../../src/view/region-tools/marks.ts';
import { bySize, seenMarks } from '../../../src/view/region-tools/seen-marks.ts';
import { mapOf } from './maps.ts';

const HUNDREDS = 600;
const openGaps = Array.from({ length: HUNDREDS }, (_, i) => ({
  widthMm: 0.2,
  partsMm2: 100,
  placeMm: [(i % 30) * 4, Math.floor(i / 30) * 4] as [number, number],
}));
const edit = { id: 'e1', does: 'ignore-mark', atMm: [0, 0] } as const;
const marks = marksOf({ ...mapOf('1'), openGaps }, [{ ...edit, atMm: [0, 0] }]);
const sheet = { width: 120, height: 80 };
const lying = (pxPerMm: number) => ({
  camera: { x: 0, y: 0, pxPerMm },
  desk: { width: 960, height: 640 },
  sheet,
});

test('of many gaps the likeliest are seen, more of them the closer the sheet is', () => {
  const whole = seenMarks(marks, lying(8));
  expect(whole).toHaveLength(120 + 1);
  expect(whole.some((mark) => mark.is === 'gap' && mark.rank === 0)).toBe(true);
  expect(seenMarks(marks, lying(4))).toHaveLength(120 + 1);
  expect(seenMarks(marks, lying(16))).toHaveLength(480 + 1);
  expect(seenMarks(marks, lying(80))).toHaveLength(HUNDREDS + 1);
});

test('what was done by hand is drawn in full, however crowded', () => {
  const { full, specks } = bySize(seenMarks(marks, lying(8)), lying(8));
  expect(full.filter(({ is }) => is === 'edit')).toHaveLength(1);
  expect(full.filter(({ is }) => is === 'gap').length).toBeLessThanOrEqual(40);
  expect(full.length + specks.length).toBe(121);
});
