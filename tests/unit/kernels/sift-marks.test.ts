import { describe, expect, it } from 'vitest';
import { type SiftMarksArgs, siftMarks } from '../../../workers/kernels/sift-marks.ts';
import { cleanHere } from '../support/clean-here.ts';
import { flatPlane, labelsOf, planeOf } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';

const LABELS = labelsOf('1.22', '...2', '3..4', '3...');
const LINE = planeOf([
  [51, 0, 255, 255],
  [0, 0, 0, 255],
  [255, 0, 0, 255],
  [255, 0, 0, 0],
]);
const sift = (smallest: number, listed = 9, more: Partial<SiftMarksArgs> = {}) =>
  siftMarks({ labels: LABELS.data, line: LINE, count: 4, smallest, listed, ...more });

describe('marks', () => {
  it('below a size go, and are counted with their ink', () => {
    const { stays, gone, goneInk } = sift(2);
    expect([...stays]).toEqual([0, 0, 1, 1, 0]);
    expect([gone, goneInk]).toEqual([2, 1.2]);
  });

  it('that go are listed the largest first, each with the pixels it lies within', () => {
    const { ink, left, top, right, bottom } = sift(9).largest;
    expect([...ink]).toEqual([3, 2, 1, 0.2]);
    expect([[...left], [...top], [...right], [...bottom]]).toEqual([
      [2, 0, 3, 0],
      [0, 2, 2, 0],
      [3, 0, 3, 0],
      [1, 3, 2, 0],
    ]);
  });

  it('are listed up to a number, of equals those that come first', () => {
    const labels = labelsOf('1.2.3.4.5').data;
    const line = planeOf([[255, 0, 255, 0, 255, 0, 255, 0, 255]]);
    const { largest, gone } = sift(2, 3, { labels, line, count: 5 });
    expect([gone, [...largest.left]]).toEqual([5, [0, 2, 4]]);
  });

  it('are none where nothing goes', () => {
    const { gone, largest } = sift(0);
    expect([gone, largest.ink.length]).toEqual([0, 0]);
  });

  it('more than a million go in one sweep, and the person hears of it', async () => {
    const noise = flatPlane(5000, 4400);
    const random = randomOf(3);
    for (let i = 0; i < noise.data.length; i++) noise.data[i] = random() < 0.09 ? 255 : 0;
    const { line, cleaning, complaints } = await cleanHere(noise, 600, { speckMm2: 0.5 });
    const { count, areaMm2, largest } = cleaning.specks;
    expect(count).toBeGreaterThan(1_000_000);
    expect(largest).toHaveLength(2000);
    expect(largest.every(({ areaMm2 }, i) => i === 0 || areaMm2 <= largest[i - 1]!.areaMm2)).toBe(true);
    expect(line.data.some((value) => value > 0)).toBe(false);
    const black = noise.data.reduce((sum, value) => sum + value, 0) / 255;
    expect(areaMm2).toBeCloseTo(black * (25.4 / 600) ** 2, 6);
    const told = complaints.find(({ code }) => code === 'many-specks')!;
    expect([told.severity, told.measure! >= count]).toEqual(['warning', true]);
    expect(told.message).toContain('raise "Specks up to"');
  });
});
