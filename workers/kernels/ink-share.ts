import type { Plane } from './plane.ts';

export interface InkShareArgs {
  plate: Plane;
  /** Half the side of the window, px, at least 1. */
  reach: number;
  /** Coverages below this count as bare. */
  least: number;
  /** Receives 0 where the window holds no ink .. 255 where it holds nothing else. */
  out: Plane;
}

/** Share of inked pixels in a square window about each pixel, cut off at the picture's edge, for rows `from..to`. */
export function inkShare(args: InkShareArgs, from: number, to: number): void {
  const { plate, reach, least, out } = args;
  const { width, height, data } = plate;
  const columns = new Int32Array(width);
  const addRow = (y: number, sign: number) => {
    if (y < 0 || y >= height) return;
    for (let x = 0, i = y * width; x < width; x++, i++) if (data[i]! >= least) columns[x]! += sign;
  };
  for (let y = from - reach; y < from + reach; y++) addRow(y, 1);
  for (let y = from; y < to; y++) {
    addRow(y + reach, 1);
    shareRow(columns, reach, rowsIn(y, reach, height), out.data, y * width);
    addRow(y - reach, -1);
  }
}

const rowsIn = (at: number, reach: number, length: number) =>
  Math.min(length - 1, at + reach) - Math.max(0, at - reach) + 1;

function shareRow(columns: Int32Array, reach: number, rows: number, out: Uint8Array, row: number): void {
  const width = columns.length;
  let sum = 0;
  for (let x = 0; x < Math.min(reach, width); x++) sum += columns[x]!;
  for (let x = 0; x < width; x++) {
    if (x + reach < width) sum += columns[x + reach]!;
    out[row + x] = ((sum * 255) / (rows * rowsIn(x, reach, width)) + 0.5) | 0;
    if (x - reach >= 0) sum -= columns[x - reach]!;
  }
}
