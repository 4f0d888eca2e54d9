import type { SharedBytes } from './plane.ts';

export interface ShowThroughArgs {
  /** RGB of the print, 3 bytes a pixel. */
  front: SharedBytes;
  width: number;
  height: number;
  /** The other side as one sees it when the sheet is turned over, as wide as the sheet; what it lacks in height is bare. */
  back: { data: Uint8Array; width: number; height: number; bands: number };
  /** Linear red, green, blue of the back where nothing is printed. */
  bare: readonly number[];
  /** How strongly the back shows, 0..1. */
  share: number;
  /** Linear light 0..1 of each screen byte. */
  light: Float64Array;
  /** Screen bytes for linear light 0..1 in equal steps. */
  encoding: Uint8Array;
  /** RGB, another picture than `front`. */
  out: SharedBytes;
}

/**
 * A print with the back of its sheet seen through it, mirrored, for rows `from..to`. The sheet gives back less light
 * where there is ink behind it: linear light times `1 - share (1 - back / bare)`, red, green and blue by themselves.
 */
export function showThrough(args: ShowThroughArgs, from: number, to: number): void {
  const { front, width, bare, share, light, encoding, out } = args;
  const last = encoding.length - 1;
  const seen = new Float64Array(3);
  for (let y = from; y < to; y++)
    for (let x = 0; x < width; x++) {
      const at = (y * width + x) * 3;
      const there = backAt(args, x, y, seen);
      for (let c = 0; c < 3; c++) {
        const taken = there ? share * (1 - Math.min(1, seen[c]! / Math.max(1e-6, bare[c]!))) : 0;
        out[at + c] = encoding[(light[front[at + c]!]! * (1 - taken) * last + 0.5) | 0]!;
      }
    }
}

/** Light of the back behind a pixel: the mean of what lies there where it is finer. @returns whether there is any */
function backAt({ back, width, light }: ShowThroughArgs, x: number, y: number, seen: Float64Array): boolean {
  const step = back.width / width;
  const [left, right] = spanOf(width - 1 - x, step, back.width);
  const [top, bottom] = spanOf(y, step, back.height);
  seen.fill(0);
  if (top >= back.height) return false;
  for (let v = top; v < bottom; v++)
    for (let u = left; u < right; u++) addLight(back, (v * back.width + u) * back.bands, light, seen);
  const count = (right - left) * (bottom - top);
  for (let c = 0; c < 3; c++) seen[c]! /= count;
  return true;
}

/** The pixels of the back that a pixel of the sheet covers along one axis, at least the one at its middle. */
function spanOf(at: number, step: number, length: number): [number, number] {
  const first = Math.floor(step > 1 ? at * step : (at + 0.5) * step);
  const end = step > 1 ? Math.floor((at + 1) * step) : first + 1;
  return [first, Math.max(first + 1, Math.min(length, end))];
}

/** Adds the light of one pixel; what is clear is as white as white. */
function addLight(
  { data, bands }: ShowThroughArgs['back'],
  at: number,
  light: Float64Array,
  seen: Float64Array,
): void {
  const alpha = bands % 2 === 0 ? data[at + bands - 1]! / 255 : 1;
  for (let c = 0; c < 3; c++) {
    const value = light[data[at + (bands < 3 ? 0 : c)]!]!;
    seen[c]! += value * alpha + (1 - alpha);
  }
}
