import { nearest } from './depth.ts';
import type { Plane } from './plane.ts';

export interface ChangeDepthArgs {
  /** Two states of a line; only pixels that are line in one of them and paper in the other are measured. */
  before: Plane;
  after: Plane;
  /** Distance to the nearest site in the column, from `columnDistance`. */
  columns: Uint16Array;
  /** `table[d2]`: what a pixel at squared distance d2 from the nearest site counts as. */
  table: Uint8Array;
  /** Receives `table[d2]`, and 255 for pixels that do not change or lie farther than the table reaches. */
  out: Uint8Array;
}

/** Coverage bit that tells line from paper. */
const LINE = 128;

/** Turns distances of the pixels that change into bytes, for rows `from..to`. */
export function changeDepth(args: ChangeDepthArgs, from: number, to: number): void {
  const { columns, table, out } = args;
  const { width } = args.before;
  const before = args.before.data;
  const after = args.after.data;
  const most = table.length - 1;
  for (let y = from; y < to; y++) {
    const row = y * width;
    for (let x = 0, i = row; x < width; x++, i++) {
      const d2 = ((before[i]! ^ after[i]!) & LINE) === 0 ? most + 1 : nearest(columns, row, x, width, most);
      out[i] = d2 > most ? 255 : table[d2]!;
    }
  }
}
