import { expect, test } from 'vitest';
import { tileStarts } from '../../../src/view/tiles.ts';

test('tiles of 512 px share 8 px and cover everything', () => {
  expect(tileStarts(1)).toEqual([0]);
  expect(tileStarts(512)).toEqual([0]);
  expect(tileStarts(513)).toEqual([0, 504]);
  expect(tileStarts(1016)).toEqual([0, 504]);
  expect(tileStarts(1017)).toEqual([0, 504, 1008]);
});
