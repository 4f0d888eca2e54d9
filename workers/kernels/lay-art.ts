import type { Affine } from './offset.ts';
import type { Plane } from './plane.ts';

export interface LayArtArgs {
  plate: Plane;
  /** Coverage 0..255: dark of the picture. */
  art: Plane;
  /** Where a pixel of the plate lies on the picture. */
  place: Affine;
  /** Coverage that full dark stands for, 0..255. */
  strength: number;
  does: 'lay' | 'set' | 'cut';
  out: Plane;
}

/** Lays a picture on a plate, bilinearly, for rows `from..to`. Beside the picture the plate stays as it is. */
export function layArt(args: LayArtArgs, from: number, to: number): void {
  const { plate, art, place, strength, does, out } = args;
  const { width } = plate;
  for (let y = from; y < to; y++)
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const before = plate.data[i]!;
      const dark = artAt(art, place, x, y);
      if (dark < 0) {
        out.data[i] = before;
        continue;
      }
      const tint = Math.floor((dark * strength + 127) / 255);
      out.data[i] =
        does === 'lay'
          ? Math.max(before, tint)
          : does === 'set'
            ? tint
            : Math.floor((before * (255 - tint) + 127) / 255);
    }
}

/** The picture's coverage at a pixel of the plate; -1 beside it. */
function artAt(
  { width, height, data }: Plane,
  { xx, xy, x0, yx, yy, y0 }: Affine,
  x: number,
  y: number,
): number {
  const u = xx * x + xy * y + x0;
  const v = yx * x + yy * y + y0;
  if (u < -0.5 || v < -0.5 || u > width - 0.5 || v > height - 0.5) return -1;
  const left = Math.min(width - 1, Math.max(0, Math.floor(u)));
  const top = Math.min(height - 1, Math.max(0, Math.floor(v)));
  const right = Math.min(width - 1, left + 1);
  const below = Math.min(height - 1, top + 1);
  const fx = Math.floor(Math.min(1, Math.max(0, u - left)) * 256);
  const fy = Math.floor(Math.min(1, Math.max(0, v - top)) * 256);
  const upper = data[top * width + left]! * (256 - fx) + data[top * width + right]! * fx;
  const lower = data[below * width + left]! * (256 - fx) + data[below * width + right]! * fx;
  return (upper * (256 - fy) + lower * fy + 32768) >> 16;
}
