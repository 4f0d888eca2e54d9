import type { Plane } from './plane.ts';

/** Where a target pixel centre lies on the source plate: `x' = xx x + xy y + x0`, `y' = yx x + yy y + y0`, px. */
export interface Affine {
  xx: number;
  xy: number;
  x0: number;
  yx: number;
  yy: number;
  y0: number;
}

export interface OffsetArgs {
  plate: Plane;
  out: Plane;
  place: Affine;
}

/** Moves a plate by parts of a pixel, bilinearly, for rows `from..to`. What lies off the plate prints nothing. */
export function offset(args: OffsetArgs, from: number, to: number): void {
  const { width, height, data } = args.plate;
  const { xx, xy, x0, yx, yy, y0 } = args.place;
  const out = args.out.data;
  const at = (x: number, y: number) =>
    x < 0 || x >= width || y < 0 || y >= height ? 0 : data[y * width + x]!;
  for (let y = from; y < to; y++) {
    const rowX = xy * y + x0;
    const rowY = yy * y + y0;
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const sx = xx * x + rowX;
      const sy = yx * x + rowY;
      const ix = Math.floor(sx);
      const iy = Math.floor(sy);
      const fx = Math.floor((sx - ix) * 256 + 0.5);
      const fy = Math.floor((sy - iy) * 256 + 0.5);
      const inside = ix >= 0 && iy >= 0 && ix + 1 < width && iy + 1 < height;
      const p = iy * width + ix;
      const a = inside ? data[p]! : at(ix, iy);
      const b = inside ? data[p + 1]! : at(ix + 1, iy);
      const c = inside ? data[p + width]! : at(ix, iy + 1);
      const d = inside ? data[p + width + 1]! : at(ix + 1, iy + 1);
      const top = a * 256 + (b - a) * fx;
      const bottom = c * 256 + (d - c) * fx;
      out[i] = (top * 256 + (bottom - top) * fy + 32768) >> 16;
    }
  }
}
