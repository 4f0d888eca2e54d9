import { expect, it } from 'vitest';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { thinRuns } from '../../../workers/kernels/thin-runs.ts';
import { drawnPlane } from '../support/pictures.ts';

/** Exact depth of every pixel by brute force, ten steps to a pixel. */
function depthOf({ width, height, data }: Plane, most: number): Plane {
  return drawnPlane(width, height, (x, y) => {
    if (data[y * width + x]! < 128) return 0;
    let least = most + 1;
    for (let v = Math.max(0, y - most); v <= Math.min(height - 1, y + most); v++)
      for (let u = Math.max(0, x - most); u <= Math.min(width - 1, x + most); u++)
        if (data[v * width + u]! < 128) least = Math.min(least, Math.hypot(u - x, v - y));
    return least > most ? 255 : Math.round(least * 10);
  });
}

const bars = (widths: readonly number[]) =>
  drawnPlane(200, widths.length * 30, (x, y) => {
    const width = widths[Math.floor(y / 30)]!;
    return x >= 20 && x < 180 && y % 30 >= 10 && y % 30 < 10 + width ? 255 : 0;
  });
const find = (plane: Plane, leastPx: number) =>
  thinRuns({ depth: depthOf(plane, 12), perPx: 10, leastPx, shortestPx: leastPx * 1.5 });

it('finds bars that are thinner than asked and no others, ends and corners included', () => {
  const found = find(bars([1, 2, 3, 5, 8, 9, 12]), 8.5 - 0.5);
  expect(found.count).toBe(4);
  expect(found.thinnestPx).toBeCloseTo(1, 5);
});

it('measures width to half a pixel and length to what corners add and hide', () => {
  for (const width of [2, 3, 5, 6]) {
    const found = find(bars([width]), 8);
    expect(Math.abs(found.thinnestPx - width)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(found.lengthPx - 160)).toBeLessThanOrEqual(2 * width);
  }
});

it('finds none in a disc or a square', () => {
  expect(
    find(
      drawnPlane(80, 80, (x, y) => (Math.hypot(x - 40, y - 40) < 25 ? 255 : 0)),
      8,
    ).count,
  ).toBe(0);
  expect(
    find(
      drawnPlane(80, 80, (x, y) => (x > 10 && x < 70 && y > 10 && y < 70 ? 255 : 0)),
      8,
    ).count,
  ).toBe(0);
});

it('gives a place on the longest run', () => {
  const [x, y] = find(bars([12, 3]), 8).longest;
  expect(y).toBe(30 + 11);
  expect(x > 20 && x < 180).toBe(true);
});

it('follows a ring and a slanting line as one run each', () => {
  const ring = drawnPlane(120, 120, (x, y) => (Math.abs(Math.hypot(x - 60, y - 60) - 45) < 2.5 ? 255 : 0));
  const around = find(ring, 8);
  expect(around.count).toBe(1);
  expect(around.lengthPx).toBeGreaterThan(90);
  const slanting = drawnPlane(120, 120, (x, y) => (Math.abs(0.6 * x - 0.8 * y + 10) < 2.5 ? 255 : 0));
  expect(find(slanting, 8).count).toBe(1);
});
