import { FAR } from './distance.ts';

export interface DepthArgs {
  /** Distance to the nearest site in the column, from `columnDistance`. */
  columns: Uint16Array;
  width: number;
  /** `table[d2]`: what a pixel at squared distance d2 from the nearest site counts as. */
  table: Uint8Array;
  /** What a pixel farther from every site than the table reaches counts as. */
  beyond: number;
  out: Uint8Array;
}

/** Turns distances of rows `from..to` to the nearest site into bytes; exact up to the length of the table. */
export function depth(args: DepthArgs, from: number, to: number): void {
  const { columns, width, table, beyond, out } = args;
  const most = table.length - 1;
  for (let y = from; y < to; y++) {
    const row = y * width;
    for (let x = 0; x < width; x++) {
      const d2 = nearest(columns, row, x, width, most);
      out[row + x] = d2 > most ? beyond : table[d2]!;
    }
  }
}

export function nearest(columns: Uint16Array, row: number, x: number, width: number, most: number): number {
  if (columns[row + x] === 0) return 0;
  let best = most + 1;
  for (let dx = 0; dx * dx < best; dx++) {
    const left = x - dx >= 0 ? columns[row + x - dx]! : FAR;
    const right = x + dx < width ? columns[row + x + dx]! : FAR;
    const g = Math.min(left, right);
    if (g === FAR) continue;
    const d2 = g * g + dx * dx;
    if (d2 < best) best = d2;
  }
  return best;
}
