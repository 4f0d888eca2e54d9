import { describe, expect, it } from 'vitest';
import { eraseMarks, weighMarks } from '../../../workers/kernels/despeckle.ts';
import { flatPlane, labelsOf, planeOf, rowsOf } from '../support/pictures.ts';

const LABELS = labelsOf('11.2', '1..2', '..3.');
const LINE = planeOf([
  [255, 128, 0, 51],
  [127, 0, 0, 51],
  [0, 0, 255, 0],
]);

describe('marks', () => {
  it('weigh the sum of their coverage, in pixels', () => {
    expect([...weighMarks({ labels: LABELS.data, line: LINE, count: 3 })]).toEqual([0, 2, 0.4, 1]);
  });

  it('that go leave paper, and those that stay keep their soft edges', () => {
    const out = flatPlane(4, 3, 9);
    eraseMarks({ labels: LABELS.data, line: LINE, stays: Uint8Array.of(0, 1, 0, 1), out }, 0, 3);
    expect(rowsOf(out.data, 4)).toEqual([
      [255, 128, 0, 0],
      [127, 0, 0, 0],
      [0, 0, 255, 0],
    ]);
  });

  it('all stay or all go', () => {
    const out = flatPlane(4, 3, 9);
    eraseMarks({ labels: LABELS.data, line: LINE, stays: Uint8Array.of(0, 1, 1, 1), out }, 0, 3);
    expect(out.data).toEqual(LINE.data);
    eraseMarks({ labels: LABELS.data, line: LINE, stays: new Uint8Array(4), out }, 0, 3);
    expect(out.data.every((value) => value === 0)).toBe(true);
  });
});
