import { describe, expect, it } from 'vitest';
import { scoreOf, totalOf } from '../../bench/regions/score.ts';
import { truthOf, widestOf } from '../../bench/regions/truth.ts';
import { drawnPlane, labelsOf } from '../support/pictures.ts';

/** Scores labels written as rows of digits; `.` is line, or nothing known. */
function score(truth: string[], found: string[], cuts: [number, number][] = [], smallest = 1) {
  const labels = labelsOf(...found).data;
  const known = labelsOf(...truth).data;
  return scoreOf({
    truth: known,
    count: Math.max(...known),
    found: labels,
    isFree: (pixel) => labels[pixel] !== 0,
    smallest,
    cuts,
  });
}

const TRUTH = ['1111.2222', '1111.2222', '1111.2222'];

describe('the score of found regions', () => {
  it('is full where they are the true ones, whatever they are called', () => {
    const same = score(TRUTH, ['7777.4444', '7777.4444', '7777.4444'], [[1, 2]]);
    expect(same).toMatchObject({ regions: 2, good: 2, surplus: [], lost: [], cuts: 1, leaks: [] });
    expect([...same.iou]).toEqual([0, 1, 1]);
  });

  it('counts a leak, and the lesser region as lost, where two came out as one', () => {
    const merged = score(['111111.22', '111111.22'], ['333333333', '333333333'], [[1, 2]]);
    expect(merged).toMatchObject({ good: 0, lost: [2], leaks: [0], surplus: [] });
    expect(merged.iou[1]).toBeCloseTo(12 / 16, 12);
  });

  it('counts a piece as surplus unless it is under the smallest size', () => {
    const found = ['1113.2222', '1113.2222', '1111.2222'];
    expect(score(TRUTH, found)).toMatchObject({ good: 1, surplus: [3], lost: [] });
    expect(score(TRUTH, found, [], 3).surplus).toEqual([]);
  });

  it('counts a piece in a cut as surplus, though nothing is known of its pixels', () => {
    expect(score(TRUTH, ['1111.2222', '111132222', '1111.2222']).surplus).toEqual([3]);
  });

  it('calls no two regions joined that only lost pixels to one another', () => {
    const shifted = score(TRUTH, ['1111.1222', '1111.1222', '1111.1222'], [[1, 2]]);
    expect(shifted).toMatchObject({ good: 0, lost: [], leaks: [] });
    expect(shifted.iou[2]).toBeCloseTo(0.75, 12);
  });

  it('needs 95 of 100 pixels', () => {
    const row = (ones: number) => '1'.repeat(ones) + '2'.repeat(100 - ones);
    const truth = ['1'.repeat(100)];
    expect(score(truth, [row(95)]).good).toBe(1);
    expect(score(truth, [row(94)]).good).toBe(0);
  });

  it('is summed over drawings', () => {
    const [whole, merged] = [
      score(TRUTH, TRUTH, [[1, 2]]),
      score(['11.2', '11.2'], ['3333', '3333'], [[1, 2]]),
    ];
    expect(totalOf([whole, merged])).toEqual({
      drawings: 2,
      regions: 4,
      cuts: 2,
      leaksPercent: 50,
      goodPercent: 50,
      surplusEach: 0,
      lost: 1,
    });
  });
});

describe('the truth of a drawing', () => {
  const boxed = drawnPlane(60, 40, (x, y) => {
    const isBox = x >= 10 && x <= 30 && y >= 10 && y <= 30 && (x === 10 || x === 30 || y === 10 || y === 30);
    const isSpeck =
      x >= 40 && x <= 45 && y >= 10 && y <= 15 && (x === 40 || x === 45 || y === 10 || y === 15);
    return isBox || isSpeck ? 255 : 0;
  });

  it('is its areas of paper, those that are too small left out', () => {
    const truth = truthOf(boxed);
    expect(truth).toMatchObject({ count: 2, closed: 1 });
    expect([truth.labels[0], truth.labels[20 * 60 + 20], truth.labels[12 * 60 + 42]]).toEqual([1, 2, 0]);
  });

  it('knows the widest disc in each area', () => {
    expect(widestOf(boxed, truthOf(boxed))[2]).toBe(19);
  });
});
