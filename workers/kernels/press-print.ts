import type { Plane } from './plane.ts';
import { drawSpot, type Spot } from './press-spots.ts';

/** Ink that comes from elsewhere on the plate: pixel x, y shows what stands at `xx x + x0, yy y + y0`, px. */
export interface Repeat {
  xx: 1 | -1;
  yy: 1 | -1;
  x0: number;
  y0: number;
  /** What prints, from `overprints`. */
  laid: Uint8Array;
}

export interface PressPrintArgs {
  plate: Plane;
  out: Plane;
  pixelMm: number;
  /** Share of the ink that each place takes, from `pressMap`; null where it is 1 all over. */
  map: { data: Float32Array; width: number; height: number; cellMm: number } | null;
  /** Share of the ink that the whole sheet takes, 0..1. */
  film: number;
  repeats: readonly Repeat[];
  /** In the order they are drawn. */
  spots: readonly Spot[];
}

/** Prints a plate with what goes wrong within a sheet, for rows `from..to`. */
export function pressPrint(args: PressPrintArgs, from: number, to: number): void {
  const { plate, out, pixelMm, map, film, repeats, spots } = args;
  const { width, data } = plate;
  const thinned = map ? thinner(map, width, pixelMm, film) : null;
  const to8 = out.data;
  const flat = Math.fround(film);
  for (let y = from; y < to; y++) {
    const row = y * width;
    if (thinned) thinned(data, to8, y);
    else if (flat === 1) to8.set(data.subarray(row, row + width), row);
    else for (let i = row; i < row + width; i++) to8[i] = (data[i]! * flat + 0.5) | 0;
    for (const repeat of repeats) addRepeat(plate, to8, repeat, y);
  }
  for (const spot of spots) drawSpot(spot, out, pixelMm, from, to);
}

/** Rows with the ink that each place takes: bilinearly, the map going on beyond its last cells. */
function thinner(
  map: NonNullable<PressPrintArgs['map']>,
  width: number,
  pixelMm: number,
  film: number,
): (data: Uint8Array, to8: Uint8Array, y: number) => void {
  const step = pixelMm / map.cellMm;
  const lefts = new Int32Array(width);
  const rights = new Int32Array(width);
  const parts = new Float64Array(width);
  for (let x = 0; x < width; x++) {
    const u = Math.min(map.width - 1, Math.max(0, (x + 0.5) * step - 0.5));
    lefts[x] = u | 0;
    rights[x] = Math.min(map.width - 1, (u | 0) + 1);
    parts[x] = u - (u | 0);
  }
  /** The two rows of cells about a row of pixels, at each pixel; they stay for as many rows as a cell is high. */
  const above = new Float64Array(width);
  const below = new Float64Array(width);
  let held = -1;
  return (data, to8, y) => {
    const row = y * width;
    const v = Math.min(map.height - 1, Math.max(0, (y + 0.5) * step - 0.5));
    const top = Math.floor(v);
    if (top !== held) {
      spread(map, top, lefts, rights, parts, above);
      spread(map, Math.min(map.height - 1, top + 1), lefts, rights, parts, below);
      held = top;
    }
    const fv = v - top;
    const gv = 1 - fv;
    for (let x = 0; x < width; x++) {
      const ink = data[row + x]!;
      to8[row + x] = ink === 0 ? 0 : (ink * Math.fround((above[x]! * gv + below[x]! * fv) * film) + 0.5) | 0;
    }
  };
}

/** One row of cells at each pixel of a row. */
function spread(
  map: NonNullable<PressPrintArgs['map']>,
  row: number,
  lefts: Int32Array,
  rights: Int32Array,
  parts: Float64Array,
  out: Float64Array,
): void {
  const start = row * map.width;
  for (let x = 0; x < out.length; x++) {
    const fu = parts[x]!;
    out[x] = map.data[start + lefts[x]!]! * (1 - fu) + map.data[start + rights[x]!]! * fu;
  }
}

/**
 * A share of ink laid on the same ink: what then prints, by what is there times 256 plus what comes.
 *
 * @param share of the ink that comes, 0..1
 */
export function overprints(share: number): Uint8Array {
  const laid = new Uint8Array(256 * 256);
  for (let value = 0; value < 256; value++)
    for (let ink = 0; ink < 256; ink++)
      laid[(value << 8) | ink] = (value + ((255 - value) * ink * share) / 255 + 0.5) | 0;
  return laid;
}

/** Lays ink on what is bare, as an overprint of the same ink. */
function addRepeat(plate: Plane, to8: Uint8Array, { xx, yy, x0, y0, laid }: Repeat, y: number): void {
  const { width, height, data } = plate;
  const sourceY = yy * y + y0;
  if (sourceY < 0 || sourceY >= height) return;
  const row = y * width;
  const first = Math.max(0, xx === 1 ? -x0 : x0 - width + 1);
  const end = Math.min(width, xx === 1 ? width - x0 : x0 + 1);
  for (let x = first, from = sourceY * width + xx * first + x0; x < end; x++, from += xx) {
    const ink = data[from]!;
    if (ink !== 0) to8[row + x] = laid[(to8[row + x]! << 8) | ink]!;
  }
}
