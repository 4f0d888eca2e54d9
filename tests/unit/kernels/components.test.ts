import { describe, expect, it } from 'vitest';
import { components } from '../../../workers/kernels/components.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { digitsOf, flatPlane, picture, planeOf, randomPicture } from '../support/pictures.ts';

function labelled(plane: Plane, neighbours: 4 | 8, from = 255, to = 255) {
  const { width, height, data } = plane;
  const labels = new Uint32Array(width * height).fill(99);
  const count = components({ data, width, height, from, to, neighbours, labels });
  return { count, labels };
}

function digits(plane: Plane, neighbours: 4 | 8): string[] {
  return digitsOf(labelled(plane, neighbours).labels, plane.width);
}

/** Labels by flooding from each pixel that has none yet, in raster order. */
function flooded({ width, height, data }: Plane, neighbours: 4 | 8): Uint32Array {
  const labels = new Uint32Array(width * height);
  let count = 0;
  for (let start = 0; start < data.length; start++) {
    if (data[start] !== 255 || labels[start] !== 0) continue;
    labels[start] = ++count;
    const open = [start];
    while (open.length > 0) {
      const at = open.pop()!;
      for (let dy = -1; dy <= 1; dy++)
        for (let dx = -1; dx <= 1; dx++) {
          if (neighbours === 4 && dx !== 0 && dy !== 0) continue;
          const x = (at % width) + dx;
          const y = Math.floor(at / width) + dy;
          const i = y * width + x;
          if (x < 0 || x >= width || y < 0 || y >= height) continue;
          if (data[i] !== 255 || labels[i] !== 0) continue;
          labels[i] = count;
          open.push(i);
        }
    }
  }
  return labels;
}

describe('components', () => {
  it('are numbered by their first pixel, row by row', () => {
    expect(digits(picture('..#.', '#..#', '#.#.'), 4)).toEqual(['..1.', '2..3', '2.4.']);
  });

  it('meet at corners over 8 neighbours and not over 4', () => {
    const steps = picture('#..#', '.##.');
    expect(digits(steps, 8)).toEqual(['1..1', '.11.']);
    expect(digits(steps, 4)).toEqual(['1..2', '.33.']);
  });

  it('join the two arms of a U under the number of the first', () => {
    expect(digits(picture('#.#', '#.#', '###'), 4)).toEqual(['1.1', '1.1', '111']);
  });

  it('keep the number of their first pixel when three arms join late', () => {
    expect(digits(picture('..#..#', '#.#..#', '#.####', '###...'), 4)).toEqual([
      '..1..1',
      '1.1..1',
      '1.1111',
      '111...',
    ]);
  });

  it('follow a spiral to its middle', () => {
    const spiral = picture('#######', '......#', '#####.#', '#...#.#', '#.###.#', '#.....#', '#######');
    expect(labelled(spiral, 4).count).toBe(1);
  });

  it('tell the two arms of a double spiral apart', () => {
    expect(digits(picture('#####', '#....', '#.###', '#...#', '###.#'), 4)).toEqual([
      '11111',
      '1....',
      '1.222',
      '1...2',
      '111.2',
    ]);
  });

  it('are one where all pixels belong, and none where none does', () => {
    expect(labelled(flatPlane(5, 4, 255), 4)).toEqual({ count: 1, labels: new Uint32Array(20).fill(1) });
    expect(labelled(flatPlane(5, 4), 8)).toEqual({ count: 0, labels: new Uint32Array(20) });
  });

  it('may be a single pixel, in the last corner or all there is', () => {
    expect(digits(picture('...', '..#'), 8)).toEqual(['...', '..1']);
    expect(digits(picture('#'), 4)).toEqual(['1']);
  });

  it('stop at the edges: the end of a row does not touch the start of the next', () => {
    expect(digits(picture('..#', '#..'), 8)).toEqual(['..1', '2..']);
  });

  it('hold the bytes from..to, both included', () => {
    const plane = planeOf([[9, 10, 15, 20, 21]]);
    expect(digitsOf(labelled(plane, 4, 10, 20).labels, 5)).toEqual(['.111.']);
    expect(digitsOf(labelled(plane, 4, 0, 9).labels, 5)).toEqual(['1....']);
  });

  it('number more of them than two bytes can count', () => {
    const dots = flatPlane(600, 600);
    for (let y = 0; y < 600; y += 2) for (let x = 0; x < 600; x += 2) dots.data[y * 600 + x] = 255;
    const { count, labels } = labelled(dots, 8);
    expect(count).toBe(90_000);
    expect(labels[0]).toBe(1);
    expect(labels[598 * 600 + 598]).toBe(90_000);
  });

  const DENSITIES = [0.1, 0.3, 0.45, 0.55, 0.6, 0.7, 0.9];
  it.each(DENSITIES)('equal those of flooding on random pictures, %d of them marked', (density) => {
    for (let seed = 0; seed < 20; seed++)
      for (const neighbours of [4, 8] as const) {
        const plane = randomPicture(23 + seed, 31, density, seed);
        expect(labelled(plane, neighbours).labels).toEqual(flooded(plane, neighbours));
      }
  });
});
