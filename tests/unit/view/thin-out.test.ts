import { expect, test } from 'vitest';
import { thinOut } from '../../../src/view/region-tools/thin-out.ts';

const thin = (places: readonly [number, number][], distance: number) =>
  thinOut(places, ([x, y]) => ({ x, y }), distance);

test('the first of those that stand too near stands; what it crowds out crowds nothing', () => {
  const { apart, crowded } = thin(
    [
      [0, 0],
      [0.9, 0],
      [1.8, 0],
      [-0.5, -0.5],
    ],
    1,
  );
  expect(apart).toEqual([
    [0, 0],
    [1.8, 0],
  ]);
  expect(crowded).toEqual([
    [0.9, 0],
    [-0.5, -0.5],
  ]);
});

test('the choice is the same wherever the sheet lies', () => {
  const places = Array.from({ length: 200 }, (_, i): [number, number] => [(i * 37) % 50, (i * 53) % 41]);
  const moved = places.map(([x, y]): [number, number] => [x + 1234.5, y - 987.25]);
  const chosen = (list: [number, number][]) =>
    new Set(thin(list, 4).apart.map((place) => list.indexOf(place)));
  expect(chosen(moved)).toEqual(chosen(places));
  expect(chosen(places).size).toBeLessThan(150);
});
