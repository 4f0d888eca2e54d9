import { LATTICE } from './lattice.ts';

/** A tile of levels repeats after this many cells. */
export const TILE = 512;

/** Where a tile lies on the sheet. */
export interface TilePlace {
  /** Cells per mm along the tile's own axes. */
  perMm: number;
  /** Direction of the tile's first axis, a unit vector. */
  cos: number;
  sin: number;
  /** Shift in cells. */
  dx: number;
  dy: number;
  /** How far the tile is bent, cells each way: where it repeats it is bent otherwise, so that no repeat shows. */
  bend: number;
  /** Knots of the bending per mm, and where they start. */
  bendPerMm: number;
  bendX: number;
  bendY: number;
}

/** Fixed point of places in a tile. */
const CELL = 65_536;
/** Pixels between which the bending is straight. */
const SEGMENT = 8;

/**
 * Part of one row of a tile laid on the sheet, bilinearly, one level 0..255 a pixel.
 *
 * @param tile `TILE * TILE` levels
 * @param lattice from `latticeOf`, for the bending
 * @param y row in px, `pixelMm` its pitch
 * @param out the row; `from..to` are written
 */
export function tileRow(
  tile: Uint8Array,
  place: TilePlace,
  lattice: Int8Array,
  y: number,
  pixelMm: number,
  out: Uint8Array,
  from: number,
  to: number,
): void {
  const yMm = (y + 0.5) * pixelMm;
  const stepU = place.cos * place.perMm * pixelMm;
  const stepV = place.sin * place.perMm * pixelMm;
  const startU = place.dx - place.sin * place.perMm * yMm + stepU / 2;
  const startV = place.dy + place.cos * place.perMm * yMm + stepV / 2;
  const bendRow = place.bendY + yMm * place.bendPerMm;
  const bendAt = (x: number, shift: number) =>
    (place.bend / 127) * smooth(lattice, place.bendX + shift + x * pixelMm * place.bendPerMm, bendRow);
  let x = from - (from % SEGMENT);
  let nextU = startU + x * stepU + bendAt(x, 0);
  let nextV = startV + x * stepV + bendAt(x, 97.5);
  while (x < to) {
    const end = x + SEGMENT;
    const [fromU, fromV] = [nextU, nextV];
    nextU = startU + end * stepU + bendAt(end, 0);
    nextV = startV + end * stepV + bendAt(end, 97.5);
    const du = Math.round(((nextU - fromU) * CELL) / SEGMENT);
    const dv = Math.round(((nextV - fromV) * CELL) / SEGMENT);
    const first = Math.max(x, from);
    let u = (Math.round(fromU * CELL) + (first - x) * du) | 0;
    let v = (Math.round(fromV * CELL) + (first - x) * dv) | 0;
    for (let k = first, last = Math.min(end, to); k < last; k++) {
      const column = (u >> 16) & (TILE - 1);
      const next = (column + 1) & (TILE - 1);
      const row = ((v >> 16) & (TILE - 1)) * TILE;
      const below = (row + TILE) & (TILE * TILE - 1);
      const fu = (u >> 8) & 255;
      const fv = (v >> 8) & 255;
      const a = tile[row + column]!;
      const c = tile[below + column]!;
      const top = a * 256 + (tile[row + next]! - a) * fu;
      const bottom = c * 256 + (tile[below + next]! - c) * fu;
      out[k] = (top * 256 + (bottom - top) * fv + 32_768) >> 16;
      u = (u + du) | 0;
      v = (v + dv) | 0;
    }
    x = end;
  }
}

/** Value noise -127..127 at a place in cells of the lattice, with a cubic fade. */
export function smooth(lattice: Int8Array, x: number, y: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [fx, fy] = [x - left, y - top];
  const su = fx * fx * (3 - 2 * fx);
  const sv = fy * fy * (3 - 2 * fy);
  const column = left & (LATTICE - 1);
  const next = (left + 1) & (LATTICE - 1);
  const row = (top & (LATTICE - 1)) * LATTICE;
  const below = ((top + 1) & (LATTICE - 1)) * LATTICE;
  const a = lattice[row + column]!;
  const c = lattice[below + column]!;
  const upper = a + (lattice[row + next]! - a) * su;
  const lower = c + (lattice[below + next]! - c) * su;
  return upper + (lower - upper) * sv;
}
