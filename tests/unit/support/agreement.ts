import type { Plane } from '../../../workers/kernels/plane.ts';

/** How well a line agrees with the one it should be, within one pixel. */
export interface Agreement {
  /** Share of what was found that lies on the wanted line, or a pixel beside it. */
  precision: number;
  /** Share of the wanted line that was found, or has what was found a pixel beside it. */
  recall: number;
}

export function agreement(found: Plane, wanted: Plane): Agreement {
  return { precision: shareNear(found, wanted), recall: shareNear(wanted, found) };
}

function shareNear(from: Plane, to: Plane): number {
  const { width, height } = from;
  let line = 0;
  let near = 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if (from.data[y * width + x]! < 128) continue;
      line++;
      if (hasLineAround(to, x, y)) near++;
    }
  return near / line;
}

function hasLineAround({ width, height, data }: Plane, x: number, y: number): boolean {
  for (let py = Math.max(0, y - 1); py <= Math.min(height - 1, y + 1); py++)
    for (let px = Math.max(0, x - 1); px <= Math.min(width - 1, x + 1); px++)
      if (data[py * width + px]! >= 128) return true;
  return false;
}
