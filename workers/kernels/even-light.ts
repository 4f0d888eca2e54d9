import { LIGHT_STEP } from './paper-light.ts';
import type { Plane } from './plane.ts';

export interface EvenLightArgs {
  line: Plane;
  out: Plane;
  /** From `paperLight`: brightness of the bare sheet at the middles of blocks. */
  light: Uint16Array;
  /** Side of a block, px. */
  side: number;
}

/** Parts of the way from one block to the next. */
const PARTS = 256;

/** Divides the light on the sheet out of rows `from..to`: paper comes to 0, and line to what it keeps back of it. */
export function evenLight(args: EvenLightArgs, from: number, to: number): void {
  const { light, side } = args;
  const { width, height, data } = args.line;
  const out = args.out.data;
  const columns = Math.ceil(width / side);
  const across = placesOf(width, side);
  const down = placesOf(height, side);
  const row = new Float64Array(columns + 1);
  for (let y = from; y < to; y++) {
    const above = down.block[y]! * columns;
    const below = Math.min(above + columns, light.length - columns);
    for (let column = 0; column < columns; column++)
      row[column] = light[above + column]! * (PARTS - down.part[y]!) + light[below + column]! * down.part[y]!;
    row[columns] = row[columns - 1]!;
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const column = across.block[x]!;
      const start = row[column]!;
      const sheet = start * PARTS + (row[column + 1]! - start) * across.part[x]!;
      const bright = (255 - data[i]!) * FULL;
      out[i] = bright >= sheet ? 0 : 255.5 - (bright / sheet) * 255;
    }
  }
}

/** One level of brightness in the parts that `sheet` is counted in. */
const FULL = LIGHT_STEP * PARTS * PARTS;

/** For each pixel: the block whose middle lies before it, and how far on the way to the next one it is. */
function placesOf(size: number, side: number): { block: Uint16Array; part: Uint16Array } {
  const last = Math.ceil(size / side) - 1;
  const block = new Uint16Array(size);
  const part = new Uint16Array(size);
  for (let at = 0; at < size; at++) {
    const place = Math.min(last, Math.max(0, (at + 0.5) / side - 0.5));
    block[at] = Math.floor(place);
    part[at] = Math.round((place - block[at]!) * PARTS);
  }
  return { block, part };
}
