import type { LabelPlane, Plane, SharedBytes } from '../../../workers/kernels/plane.ts';
import { randomOf } from './random.ts';

/** Shared bytes, all 0 or as given. */
export function sharedBytes(from: number | ArrayLike<number>): SharedBytes {
  const length = typeof from === 'number' ? from : from.length;
  const bytes = new Uint8Array(new SharedArrayBuffer(length));
  if (typeof from !== 'number') bytes.set(from);
  return bytes;
}

/** A plane of the given numbers, row by row. */
export function planeOf(rows: readonly (readonly number[])[]): Plane {
  return { width: rows[0]!.length, height: rows.length, data: sharedBytes(rows.flat()) };
}

/** A plane of one value; 0 when it is left out. */
export function flatPlane(width: number, height: number, value = 0): Plane {
  return { width, height, data: sharedBytes(width * height).fill(value) };
}

/** A plane drawn pixel by pixel. */
export function drawnPlane(width: number, height: number, value: (x: number, y: number) => number): Plane {
  const plane = flatPlane(width, height);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) plane.data[y * width + x] = value(x, y);
  return plane;
}

/** A picture in characters, one string a row: `#` is 255, `.` is 0. */
export function picture(...rows: string[]): Plane {
  return planeOf(rows.map((row) => [...row].map((mark) => (mark === '#' ? 255 : 0))));
}

/** Pixels that are line with the given chance, else paper. */
export function randomPicture(width: number, height: number, density: number, seed: number): Plane {
  const random = randomOf(seed);
  return drawnPlane(width, height, () => (random() < density ? 255 : 0));
}

/** Pixels of any value. */
export function randomPlane(width: number, height: number, seed: number): Plane {
  const random = randomOf(seed);
  return drawnPlane(width, height, () => Math.floor(random() * 256));
}

/** Labels in digits, one string a row; `.` is 0. */
export function labelsOf(...rows: string[]): LabelPlane {
  const values = rows.flatMap((row) => [...row].map((mark) => (mark === '.' ? 0 : Number(mark))));
  const data = new Uint32Array(new SharedArrayBuffer(values.length * 4));
  data.set(values);
  return { width: rows[0]!.length, height: rows.length, data };
}

/** Labels of nothing. */
export function emptyLabels(width: number, height: number): LabelPlane {
  return { width, height, data: new Uint32Array(new SharedArrayBuffer(width * height * 4)) };
}

/** The numbers of a picture as rows, to compare and to read. */
export function rowsOf(data: ArrayLike<number>, width: number): number[][] {
  const rows: number[][] = [];
  for (let at = 0; at < data.length; at += width)
    rows.push(Array.from({ length: width }, (_, x) => data[at + x]!));
  return rows;
}

/** Labels as digits, `.` for 0: the reverse of `labelsOf`. */
export function digitsOf(data: ArrayLike<number>, width: number): string[] {
  return rowsOf(data, width).map((row) => row.map((label) => (label === 0 ? '.' : String(label))).join(''));
}

/** The picture seen in a mirror that stands to its right. */
export function mirrored(plane: Plane): Plane {
  return drawnPlane(plane.width, plane.height, (x, y) => plane.data[y * plane.width + plane.width - 1 - x]!);
}

/** Rows become columns. */
export function transposed(plane: Plane): Plane {
  return drawnPlane(plane.height, plane.width, (x, y) => plane.data[x * plane.width + y]!);
}

/** 255 - value everywhere. */
export function negative(plane: Plane): Plane {
  return drawnPlane(plane.width, plane.height, (x, y) => 255 - plane.data[y * plane.width + x]!);
}

/** Whether every pixel of a plane has this value. */
export function isFlat(plane: Plane, value: number): boolean {
  return plane.data.every((pixel) => pixel === value);
}

/** Mean of a plane in % of a solid. */
export function percentOf(data: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < data.length; i++) sum += data[i]!;
  return (sum * 100) / 255 / data.length;
}
