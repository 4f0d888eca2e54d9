import { expect, it } from 'vitest';
import { filmSide } from '../../../workers/kernels/film-side.ts';
import { place } from '../../../workers/kernels/place.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';

function plane(rows: readonly (readonly number[])[]): Plane {
  const data = new Uint8Array(new SharedArrayBuffer(rows.length * rows[0]!.length));
  data.set(rows.flat());
  return { width: rows[0]!.length, height: rows.length, data };
}

function rowsOf({ width, height, data }: Plane): number[][] {
  return Array.from({ length: height }, (_, y) => [...data.subarray(y * width, (y + 1) * width)]);
}

const blank = (width: number, height: number) => plane(Array(height).fill(Array(width).fill(99)));
const PLATE = plane([
  [1, 2],
  [3, 4],
]);

it('lays a plate on a larger sheet, paper around it', () => {
  const to = blank(4, 4);
  place({ from: PLATE, to, at: [1, 1], box: [0, 0, 4, 4], beyond: 'paper' }, 0, 4);
  expect(rowsOf(to)).toEqual([
    [0, 0, 0, 0],
    [0, 1, 2, 0],
    [0, 3, 4, 0],
    [0, 0, 0, 0],
  ]);
});

it('runs its edges on outwards as far as the box reaches', () => {
  const to = blank(6, 5);
  place({ from: PLATE, to, at: [2, 2], box: [1, 1, 5, 4], beyond: 'edge' }, 0, 5);
  expect(rowsOf(to)).toEqual([
    [0, 0, 0, 0, 0, 0],
    [0, 1, 1, 2, 2, 0],
    [0, 1, 1, 2, 2, 0],
    [0, 3, 3, 4, 4, 0],
    [0, 0, 0, 0, 0, 0],
  ]);
});

it('cuts a plate that is larger', () => {
  const to = blank(1, 1);
  place({ from: PLATE, to, at: [-1, -1], box: [0, 0, 1, 1], beyond: 'paper' }, 0, 1);
  expect(rowsOf(to)).toEqual([[4]]);
});

it('leaves bare what lies wholly off the sheet', () => {
  const to = blank(2, 2);
  place({ from: PLATE, to, at: [5, -9], box: [0, 0, 2, 2], beyond: 'paper' }, 0, 2);
  expect(rowsOf(to)).toEqual([
    [0, 0],
    [0, 0],
  ]);
});

it('makes film: black where ink prints, turned over, inverted, or of two values', () => {
  const coverage = plane([[0, 100, 255]]);
  const film = (change: Partial<Parameters<typeof filmSide>[0]>) => {
    const grey = blank(3, 1);
    filmSide({ plane: coverage, grey, mirrored: false, negative: false, oneBit: false, ...change }, 0, 1);
    return rowsOf(grey)[0];
  };
  expect(film({})).toEqual([255, 155, 0]);
  expect(film({ mirrored: true })).toEqual([0, 155, 255]);
  expect(film({ negative: true })).toEqual([0, 100, 255]);
  expect(film({ oneBit: true })).toEqual([255, 255, 0]);
  expect(film({ oneBit: true, negative: true, mirrored: true })).toEqual([255, 0, 0]);
});
