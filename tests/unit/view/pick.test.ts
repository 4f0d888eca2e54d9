import { expect, test } from 'vitest';
import { nearestRegion, nextRegion } from '../../../src/view/next-region.ts';
import { regionAt, regionsAlong } from '../../../src/view/pick.ts';
import { mapOf } from './maps.ts';

const map = mapOf('1112', '1012', '3344');

test('a place reads its region; lines out of reach and the desk read none', () => {
  expect(regionAt(map, { x: 0.5, y: 0.5 })?.id).toBe('r1');
  expect(regionAt(map, { x: 3.99, y: 1.99 })?.id).toBe('r2');
  expect(regionAt(map, { x: 1.5, y: 1.5 })).toBeNull();
  expect(regionAt(map, { x: -0.1, y: 1 })).toBeNull();
  expect(regionAt(map, { x: 4, y: 1 })).toBeNull();
});

test('a stroke takes every region it crosses, in order, however fast it was', () => {
  expect(regionsAlong(map, { x: 0.5, y: 0.5 }, { x: 3.5, y: 2.5 })).toEqual(['r1', 'r4']);
  expect(regionsAlong(map, { x: 0.5, y: 2.5 }, { x: 3.5, y: 0.5 })).toEqual(['r3', 'r1', 'r2']);
  expect(regionsAlong(map, { x: -9, y: 0.5 }, { x: 9, y: 0.5 })).toEqual(['r1', 'r2']);
});

test('the next region that way lies within a quarter turn; straight ahead beats aside', () => {
  const [first, second, third, fourth] = map.regions;
  expect(nextRegion(map.regions, first!, 'right')?.id).toBe(second!.id);
  expect(nextRegion(map.regions, third!, 'right')?.id).toBe(fourth!.id);
  expect(nextRegion(map.regions, second!, 'down')?.id).toBe(fourth!.id);
  expect(nextRegion(map.regions, first!, 'up')).toBeNull();
});

test('the nearest region to a place', () => {
  expect(nearestRegion(map.regions, { x: 3.4, y: 2.4 })?.id).toBe('r4');
  expect(nearestRegion([], { x: 0, y: 0 })).toBeNull();
});
