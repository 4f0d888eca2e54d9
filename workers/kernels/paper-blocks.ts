import type { Plane } from './plane.ts';

export interface PaperBlocksArgs {
  line: Plane;
  /** Side of a block, px. */
  side: number;
  /** Receives one brightness a block, row by row: `ceil(width / side)` by `ceil(height / side)`. */
  levels: Uint8Array;
}

/** This share of a block's pixels is at least as bright as its level: paper, though much line lies on it. */
const BRIGHTEST = 0.2;

/** How bright the paper of each block is, 0..255, for rows of blocks `from..to`. */
export function paperBlocks(args: PaperBlocksArgs, from: number, to: number): void {
  const { side, levels } = args;
  const { width, height, data } = args.line;
  const columns = Math.ceil(width / side);
  const counts = new Uint32Array(columns * 256);
  for (let row = from; row < to; row++) {
    counts.fill(0);
    const bottom = Math.min(height, (row + 1) * side);
    for (let y = row * side; y < bottom; y++)
      for (let column = 0, x = y * width; column < columns; column++) {
        const right = y * width + Math.min(width, (column + 1) * side);
        const base = column << 8;
        for (; x < right; x++) counts[base + data[x]!]!++;
      }
    for (let column = 0; column < columns; column++) {
      const pixels = (Math.min(width, (column + 1) * side) - column * side) * (bottom - row * side);
      levels[row * columns + column] = 255 - lowLevel(counts, column << 8, pixels * BRIGHTEST);
    }
  }
}

/** The coverage up to which at least `pixels` pixels lie. */
function lowLevel(counts: Uint32Array, base: number, pixels: number): number {
  let sum = 0;
  let value = 0;
  for (; value < 255; value++) {
    sum += counts[base + value]!;
    if (sum >= pixels) return value;
  }
  return value;
}
