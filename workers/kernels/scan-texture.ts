import type { Plane } from './plane.ts';

export interface ScanTextureArgs {
  /** From `evenScan`: bytes around 128, repeating without a seam. */
  tile: Plane;
  /** Pixels of the tile to one of the sheet. */
  step: number;
  /** 1 as scanned. */
  strength: number;
  out: Plane;
}

/** Lays a scanned paper out over a sheet, bilinearly, for rows `from..to`. */
export function scanTexture({ tile, step, strength, out }: ScanTextureArgs, from: number, to: number): void {
  const { width, height, data } = tile;
  for (let y = from; y < to; y++) {
    const v = (y + 0.5) * step;
    const top = Math.floor(v);
    const upper = (top % height) * width;
    const lower = ((top + 1) % height) * width;
    for (let x = 0; x < out.width; x++) {
      const u = (x + 0.5) * step;
      const left = Math.floor(u);
      const [a, b] = [left % width, (left + 1) % width];
      const above = data[upper + a]! + (data[upper + b]! - data[upper + a]!) * (u - left);
      const below = data[lower + a]! + (data[lower + b]! - data[lower + a]!) * (u - left);
      const value = 128 + (above + (below - above) * (v - top) - 128) * strength;
      out.data[y * out.width + x] = Math.min(255, Math.max(0, value + 0.5));
    }
  }
}
