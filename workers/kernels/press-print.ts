import type { Plane } from './plane.ts';
import { drawSpot, type Spot } from './press-spots.ts';

/** Ink that comes from elsewhere on the plate: pixel x, y shows what stands at `xx x + x0, yy y + y0`, px. */
export interface Repeat {
  xx: 1 | -1;
  yy: 1 | -1;
  x0: number;
  y0: number;
  /** Share of that ink that prints again, 0..1. */
  share: number;
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
  const { width } = plate;
  const kept = new Float32Array(width).fill(film);
  for (let y = from; y < to; y++) {
    const row = y * width;
    if (map) keptRow(map, y, pixelMm, film, kept);
    for (let x = 0; x < width; x++) out.data[row + x] = plate.data[row + x]! * kept[x]! + 0.5;
    for (const repeat of repeats) addRepeat(plate, out, repeat, y);
  }
  for (const spot of spots) drawSpot(spot, out, pixelMm, from, to);
}

/** Bilinearly, the map going on beyond its last cells. */
function keptRow(
  map: NonNullable<PressPrintArgs['map']>,
  y: number,
  pixelMm: number,
  film: number,
  kept: Float32Array,
): void {
  const step = pixelMm / map.cellMm;
  const v = Math.min(map.height - 1, Math.max(0, (y + 0.5) * step - 0.5));
  const top = Math.floor(v);
  const upper = top * map.width;
  const lower = Math.min(map.height - 1, top + 1) * map.width;
  const fv = v - top;
  for (let x = 0; x < kept.length; x++) {
    const u = Math.min(map.width - 1, Math.max(0, (x + 0.5) * step - 0.5));
    const left = u | 0;
    const right = Math.min(map.width - 1, left + 1);
    const fu = u - left;
    const a = map.data[upper + left]! * (1 - fu) + map.data[upper + right]! * fu;
    const b = map.data[lower + left]! * (1 - fu) + map.data[lower + right]! * fu;
    kept[x] = (a * (1 - fv) + b * fv) * film;
  }
}

/** Lays ink on what is bare, as an overprint of the same ink. */
function addRepeat(plate: Plane, out: Plane, { xx, yy, x0, y0, share }: Repeat, y: number): void {
  const { width, height, data } = plate;
  const sourceY = yy * y + y0;
  if (sourceY < 0 || sourceY >= height) return;
  const source = sourceY * width;
  const row = y * width;
  for (let x = 0; x < width; x++) {
    const sourceX = xx * x + x0;
    if (sourceX < 0 || sourceX >= width) continue;
    const ink = data[source + sourceX]!;
    if (ink === 0) continue;
    const value = out.data[row + x]!;
    out.data[row + x] = value + ((255 - value) * ink * share) / 255 + 0.5;
  }
}
