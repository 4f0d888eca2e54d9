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
  const nothing = new Uint8Array(width);
  const rowOf = (y: number) => (y >= 0 && y < height ? data.subarray(y * width, (y + 1) * width) : nothing);
  /** Inked pixels of each column within the window; none beyond the picture's edges. */
  const columns = new Int32Array(width + 2 * reach);
  for (let y = from - reach - 1; y < from + reach; y++) exchange(rowOf(y), nothing, least, columns, reach);
  const shares = new Map<number, Uint8Array>();
  for (let y = from; y < to; y++) {
    exchange(rowOf(y + reach), rowOf(y - reach - 1), least, columns, reach);
    const rows = rowsIn(y, reach, height);
    const table = shares.get(rows) ?? sharesOf(rows * (2 * reach + 1));
    shares.set(rows, table);
    shareRow(columns, reach, rows, table, out.data.subarray(y * width, (y + 1) * width));
  }
}

const rowsIn = (at: number, reach: number, length: number) =>
  Math.min(length - 1, at + reach) - Math.max(0, at - reach) + 1;

/** 0..255 for each number of inked pixels of a window of `whole` pixels. */
function sharesOf(whole: number): Uint8Array {
  return Uint8Array.from({ length: whole + 1 }, (_, sum) => ((sum * 255) / whole + 0.5) | 0);
}

/** Takes the inked pixels of one row in and leaves those of another out; without a branch, as grain has no pattern. */
function exchange(
  enters: Uint8Array,
  leaves: Uint8Array,
  least: number,
  columns: Int32Array,
  shift: number,
): void {
  for (let x = 0; x < enters.length; x++)
    columns[x + shift]! += ((leaves[x]! - least) >>> 31) - ((enters[x]! - least) >>> 31);
}

/** @param table for windows that no edge of the picture cuts off at a side */
function shareRow(
  columns: Int32Array,
  reach: number,
  rows: number,
  table: Uint8Array,
  out: Uint8Array,
): void {
  const width = out.length;
  const across = 2 * reach;
  const byEdge = (sum: number, x: number) => ((sum * 255) / (rows * rowsIn(x, reach, width)) + 0.5) | 0;
  const firstWhole = Math.min(reach, width);
  const endWhole = Math.max(firstWhole, width - reach);
  let sum = 0;
  for (let x = 0; x < across; x++) sum += columns[x]!;
  let x = 0;
  for (; x < firstWhole; x++) {
    sum += columns[x + across]!;
    out[x] = byEdge(sum, x);
    sum -= columns[x]!;
  }
  for (; x < endWhole; x++) {
    sum += columns[x + across]!;
    out[x] = table[sum]!;
    sum -= columns[x]!;
  }
  for (; x < width; x++) {
    sum += columns[x + across]!;
    out[x] = byEdge(sum, x);
    sum -= columns[x]!;
  }
}
