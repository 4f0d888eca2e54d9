import { describe, expect, it } from 'vitest';
import type { Borders } from '../../../workers/kernels/borders.ts';
import { joinSmall } from '../../../workers/kernels/join-small.ts';

/** `1-2:5` says that labels 1 and 2 share 5 px of border. */
function bordersOf(...texts: string[]): Borders {
  const parts = texts.map((text) => text.split(/[-:]/).map(Number));
  return {
    a: Uint32Array.from(parts, ([a]) => a!),
    b: Uint32Array.from(parts, ([, b]) => b!),
    length: Float64Array.from(parts, ([, , length]) => length!),
  };
}

/** Areas of labels 1.. with what they fill (by default half as much again), and where each label goes. */
function joined(smallest: number, areas: number[], touching: Borders, fills = areas.map((px) => px * 1.5)) {
  const { table, count } = joinSmall([0, ...areas], [0, ...fills], touching, smallest);
  expect(table[0]).toBe(0);
  expect(Math.max(0, ...table)).toBe(count);
  return [...table].slice(1);
}

describe('joining small areas', () => {
  it('keeps everything when the smallest is 0', () => {
    expect(joined(0, [1, 1, 500, 2], bordersOf('1-2:9', '2-3:9', '3-4:9'))).toEqual([1, 2, 3, 4]);
  });

  it('keeps an area of just the smallest, and joins one a pixel less', () => {
    expect(joined(10, [100, 10], bordersOf('1-2:5'))).toEqual([1, 2]);
    expect(joined(10, [100, 9], bordersOf('1-2:5'))).toEqual([1, 1]);
  });

  it('joins a small area to the neighbour it shares most border with', () => {
    expect(joined(10, [100, 200, 3], bordersOf('1-3:4', '2-3:6'))).toEqual([1, 2, 2]);
    expect(joined(10, [100, 200, 3], bordersOf('1-3:6', '2-3:4'))).toEqual([1, 2, 1]);
  });

  it('joins to the lower label where borders are equal', () => {
    expect(joined(10, [100, 200, 3], bordersOf('1-3:5', '2-3:5'))).toEqual([1, 2, 1]);
  });

  it('makes one region of hatch cells that together fill enough', () => {
    expect(joined(10, [500, 4, 4, 4], bordersOf('1-2:3', '2-3:3', '3-4:3'), [520, 6, 6, 6])).toEqual([
      1, 2, 2, 2,
    ]);
  });

  it('counts a group by what it fills, line and all', () => {
    const cells = bordersOf('1-2:3', '2-3:3');
    expect(joined(10, [500, 4, 4], cells, [520, 5, 5])).toEqual([1, 2, 2]);
    expect(joined(10, [500, 4, 4], cells, [520, 5, 4.9])).toEqual([1, 1, 1]);
  });

  it('counts a single area by what lines close off, not by what it fills', () => {
    expect(joined(10, [500, 9], bordersOf('1-2:3'), [520, 40])).toEqual([1, 1]);
  });

  it('keeps a genuine counter beside hatch cells apart', () => {
    const touching = bordersOf('1-2:3', '2-3:3', '3-4:8');
    expect(joined(10, [500, 6, 6, 12], touching)).toEqual([1, 2, 2, 3]);
  });

  it('joins a group that stays too small to the region it shares most border with, as one', () => {
    const touching = bordersOf('1-3:2', '2-3:1', '2-4:2', '3-4:9');
    expect(joined(100, [500, 600, 3, 3], touching)).toEqual([1, 2, 2, 2]);
  });

  it('keeps a small area that touches nothing', () => {
    expect(joined(10, [3, 500], bordersOf())).toEqual([1, 2]);
  });

  it('keeps small areas that touch only one another, as one region', () => {
    expect(joined(100, [3, 4], bordersOf('1-2:3'))).toEqual([1, 1]);
  });

  it('numbers what is left in the order of the old labels', () => {
    expect(joined(10, [3, 500, 4, 600], bordersOf('1-4:2', '2-3:5'))).toEqual([2, 1, 1, 2]);
  });
});
