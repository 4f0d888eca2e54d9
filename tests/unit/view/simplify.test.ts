import { expect, test } from 'vitest';
import { distanceToSpan, simplify } from '../../../src/view/region-tools/simplify.ts';

const places = (...list: [number, number][]) => list.map(([x, y]) => ({ x, y }));

test('places along a straight stretch go, corners stay', () => {
  const path = places([0, 0], [1, 0.01], [2, 0], [2, 1], [2.01, 2], [2, 3]);
  expect(simplify(path, 0.05)).toEqual(places([0, 0], [2, 0], [2, 3]));
});

test('nothing lies farther from the result than the tolerance', () => {
  const wave = Array.from({ length: 300 }, (_, i) => ({ x: i / 10, y: Math.sin(i / 12) * 3 }));
  const kept = simplify(wave, 0.1);
  expect(kept.length).toBeLessThan(60);
  for (const place of wave) {
    const off = Math.min(...kept.slice(1).map((to, i) => distanceToSpan(place, kept[i]!, to)));
    expect(off).toBeLessThanOrEqual(0.1);
  }
});

test('a loop that ends where it began keeps its far side', () => {
  const loop = places([0, 0], [5, 0], [5, 5], [0, 5], [0, 0]);
  expect(simplify(loop, 0.5)).toEqual(loop);
});

test('a scribble keeps no more corners than a document takes', () => {
  const scribble = Array.from({ length: 6000 }, (_, i) => ({ x: i % 2, y: (i * 7919) % 101 }));
  const kept = simplify(scribble, 1e-6);
  expect(kept.length).toBeLessThanOrEqual(400);
  expect(kept.length).toBeGreaterThan(1);
  expect([kept[0], kept.at(-1)]).toEqual([scribble[0], scribble.at(-1)]);
});

test('fewer than three places are as simple as can be', () => {
  expect(simplify(places([1, 1], [2, 2]), 9)).toEqual(places([1, 1], [2, 2]));
});
