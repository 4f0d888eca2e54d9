import { expect, test } from 'vitest';
import { outlineOf } from '../../../src/view/outline.ts';
import { mapOf } from './maps.ts';

const loops = (path: string) => path.split('Z').filter((loop) => loop !== '');

test('a small region is drawn through the middles of its edges', () => {
  const map = mapOf('000', '010', '000');
  expect(outlineOf(map, 1)).toBe('M1.5 1L2 1.5L1.5 2L1 1.5Z');
});

test('a region up to the frame closes along it', () => {
  expect(outlineOf(mapOf('1'), 1)).toBe('M0.5 0L1 0.5L0.5 1L0 0.5Z');
});

test('holes and pieces are loops of their own; corners that only touch do not join', () => {
  expect(loops(outlineOf(mapOf('11111', '10001', '11111'), 1))).toHaveLength(2);
  expect(loops(outlineOf(mapOf('1000', '0100', '0011'), 1))).toHaveLength(3);
});

test('a long border is smooth: steps of a slant come out straight', () => {
  const rows = Array.from({ length: 24 }, (_, y) => '1'.repeat(y + 1).padEnd(24, '0'));
  const places = outlineOf(mapOf(...rows), 1)
    .slice(1, -1)
    .split('L')
    .map((place) => place.split(' ').map(Number) as [number, number]);
  const slant = places.filter(([x, y]) => x > 5 && x < 18 && y > 5 && y < 20 && y - x < 3 && x - y < 3);
  expect(slant.length).toBeGreaterThan(5);
  for (const [x, y] of slant) expect(x - y).toBeCloseTo(0.5, 9);
});
