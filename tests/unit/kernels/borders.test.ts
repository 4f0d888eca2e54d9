import { describe, expect, it } from 'vitest';
import { borders } from '../../../workers/kernels/borders.ts';
import type { LabelPlane } from '../../../workers/kernels/plane.ts';
import { emptyLabels, labelsOf } from '../support/pictures.ts';

function found(labels: LabelPlane, count: number) {
  const { a, b, length } = borders({
    labels: labels.data,
    width: labels.width,
    height: labels.height,
    count,
  });
  return [...length].map((px, k) => ({ between: [a[k]!, b[k]!], px }));
}

/** Label 1 where the shape holds, 2 elsewhere. */
function shape(size: number, inside: (x: number, y: number) => boolean): LabelPlane {
  const labels = emptyLabels(size, size);
  const middle = size / 2;
  for (let i = 0; i < labels.data.length; i++)
    labels.data[i] = inside((i % size) + 0.5 - middle, Math.floor(i / size) + 0.5 - middle) ? 1 : 2;
  return labels;
}

/** Measured over true length. */
function ratio(labels: LabelPlane, length: number): number {
  const [only, ...others] = found(labels, 2);
  expect(others).toEqual([]);
  return only!.px / length;
}

describe('borders', () => {
  it('of one region are none', () => {
    expect(found(labelsOf('111', '111'), 1)).toEqual([]);
  });

  it('join each pair once, lower label first, in rising order', () => {
    const pairs = found(labelsOf('2211', '2211', '3333', '2211'), 3).map(({ between }) => between);
    expect(pairs).toEqual([
      [1, 2],
      [1, 3],
      [2, 3],
    ]);
  });

  it('are none where unlabelled pixels part the regions', () => {
    expect(found(labelsOf('1.2', '1.2'), 2)).toEqual([]);
  });

  it('weigh crossings of rows, columns and diagonals by the formula of Cauchy and Crofton', () => {
    // 2 rows cross it, and 2 diagonals: pi/8 (2 + 2 / sqrt 2)
    const [only] = found(labelsOf('12', '12'), 2);
    expect(only!.px).toBeCloseTo((Math.PI / 8) * (2 + Math.SQRT2), 12);
  });

  it('have the same length lying and standing', () => {
    const standing = found(labelsOf('1122', '1122', '1122', '1122'), 2);
    expect(found(labelsOf('1111', '1111', '2222', '2222'), 2)).toEqual(standing);
  });

  it('that are straight are 5.2 % short: pi/8 (1 + sqrt 2) of their length', () => {
    const short = (Math.PI / 8) * (1 + Math.SQRT2);
    const side = (size: number) =>
      found(
        shape(size, (x) => x < 0),
        2,
      )[0]!.px;
    expect(side(300) - side(200)).toBeCloseTo(100 * short, 9);
    const slope = (size: number) =>
      found(
        shape(size, (x, y) => x < y),
        2,
      )[0]!.px;
    expect((slope(300) - slope(200)) / Math.SQRT2 / 100).toBeCloseTo(short, 9);
  });

  it.each([0, 10, 22.5, 30, 45, 60, 80])(
    'of a square turned by %d degrees are at most about one part in twenty off',
    (degrees) => {
      const turn = (degrees * Math.PI) / 180;
      const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
      const square = shape(
        400,
        (x, y) => Math.max(Math.abs(cos * x + sin * y), Math.abs(cos * y - sin * x)) < 120,
      );
      expect(Math.abs(ratio(square, 960) - 1)).toBeLessThan(0.055);
    },
  );

  it('of a circle, which has every direction, are right to one part in a hundred', () => {
    for (const radius of [40, 80, 150]) {
      const circle = shape(320, (x, y) => x * x + y * y < radius * radius);
      expect(Math.abs(ratio(circle, 2 * Math.PI * radius) - 1)).toBeLessThan(0.01);
    }
  });
});
