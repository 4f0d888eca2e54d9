import { describe, expect, it } from 'vitest';
import { components } from '../../../workers/kernels/components.ts';
import { fillPinholes, findPinholes } from '../../../workers/kernels/pinholes.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { flatPlane, picture, planeOf, rowsOf } from '../support/pictures.ts';

function filled(line: Plane, smallest: number) {
  const { data, width, height } = line;
  const labels = new Uint32Array(data.length);
  const count = components({ data, width, height, from: 0, to: 127, neighbours: 4, labels });
  const found = findPinholes({ labels, count, width, height, smallest });
  const out = flatPlane(width, height, 9);
  fillPinholes({ labels, line, fills: found.fills, out }, 0, height);
  return { ...found, out };
}

const HOLES = picture('##########', '#.###..###', '#####..#.#', '##########', '#..#######');

describe('pinholes', () => {
  it('below a size are filled, larger ones and notches in the edge stay', () => {
    const { out, count, pixels } = filled(HOLES, 3);
    expect([count, pixels]).toEqual([2, 2]);
    expect(out.data).toEqual(
      picture('##########', '#####..###', '#####..###', '##########', '#..#######').data,
    );
  });

  it('of exactly the size stay', () => {
    expect(filled(HOLES, 1).count).toBe(0);
    expect(filled(HOLES, 4).count).toBe(2);
    expect(filled(HOLES, 4.5).count).toBe(3);
  });

  it('take their soft rim with them, but not the soft edge of the line', () => {
    const line = planeOf([
      [0, 0, 0, 0, 0],
      [0, 200, 180, 200, 0],
      [0, 200, 90, 200, 0],
      [0, 200, 180, 200, 0],
      [0, 0, 0, 0, 0],
    ]);
    expect(rowsOf(filled(line, 2).out.data, 5)).toEqual([
      [0, 0, 0, 0, 0],
      [0, 200, 180, 200, 0],
      [0, 200, 255, 200, 0],
      [0, 200, 180, 200, 0],
      [0, 0, 0, 0, 0],
    ]);
    const thick = planeOf(
      Array.from({ length: 7 }, (_, y) =>
        Array.from({ length: 7 }, (_, x) =>
          x === 3 && y === 3 ? 60 : Math.abs(x - 3) + Math.abs(y - 3) === 1 ? 190 : 255,
        ),
      ),
    );
    expect(filled(thick, 2).out.data.every((value) => value === 255)).toBe(true);
  });
});
