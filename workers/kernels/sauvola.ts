import type { Plane } from './plane.ts';

export interface SauvolaArgs {
  line: Plane;
  out: Plane;
  /** The window reaches so many px to each side; at the edge of the picture it is cut off. */
  reach: number;
  /** How far an even neighbourhood pulls the threshold down, 0..1. */
  k: number;
  /** Half of the soft ramp about the threshold, levels; 0 for a hard edge. */
  half: number;
  /** Coverage from which a pixel is line whatever stands around it: keeps the inside of solids; 256 for never. */
  sure: number;
}

/** The greatest spread that brightness can have. */
const R = 128;

/**
 * Parts line from paper by the mean m and the spread s of the brightness around each pixel: what is darker than
 * m (1 + k (s / R - 1)) is line and comes out at 128 or more, with a soft ramp. Rows `from..to`; exact sums.
 * Source: Sauvola & Pietikainen, "Adaptive document image binarization", Pattern Recognition 33 (2000), eq. 5.
 */
export function sauvola(args: SauvolaArgs, from: number, to: number): void {
  const { reach, k, half, sure } = args;
  const { width, height, data } = args.line;
  const out = args.out.data;
  const columns: Columns = { sums: new Int32Array(width), squares: new Float64Array(width) };
  const ramp = 127 / half;
  const slope = k / R;
  const lowest = 1 - k;
  const least = 255 - sure;
  for (let y = Math.max(0, from - reach); y < Math.min(height, from + reach + 1); y++)
    addRow(data, y * width, columns);
  for (let y = from; y < to; y++) {
    if (y > from) slide(columns, data, width, y + reach < height ? y + reach : -1, y - reach - 1);
    const rows = Math.min(height, y + reach + 1) - Math.max(0, y - reach);
    const { sums, squares } = columns;
    let sum = 0;
    let square = 0;
    for (let x = 0; x < Math.min(reach, width); x++) {
      sum += sums[x]!;
      square += squares[x]!;
    }
    const row = y * width;
    for (let x = 0; x < width; ) {
      const end = x <= reach || x >= width - reach ? x + 1 : width - reach;
      const across = Math.min(width, x + reach + 1) - Math.max(0, x - reach);
      const share = 1 / (across * rows);
      for (; x < end; x++) {
        const right = x + reach;
        const left = x - reach - 1;
        if (right < width) {
          sum += sums[right]!;
          square += squares[right]!;
        }
        if (left >= 0) {
          sum -= sums[left]!;
          square -= squares[left]!;
        }
        const mean = sum * share;
        const variance = square * share - mean * mean;
        const bright = 255 - data[row + x]!;
        const room = bright - half - mean * lowest;
        const steep = slope * mean;
        if (room >= 0 && bright - half >= least && steep * steep * variance <= room * room) {
          out[row + x] = 0;
          continue;
        }
        const level = mean * lowest + (variance > 0 ? steep * Math.sqrt(variance) : 0);
        const below = Math.max(level, least) - bright;
        if (below >= half) out[row + x] = 255;
        else if (below <= -half) out[row + x] = 0;
        else out[row + x] = (below > 0 ? 128.5 : 127.5) + below * ramp;
      }
    }
  }
}

/** Sums of brightness and of its square down each column of the window. */
interface Columns {
  sums: Int32Array;
  squares: Float64Array;
}

function addRow(data: Uint8Array, row: number, { sums, squares }: Columns): void {
  for (let x = 0; x < sums.length; x++) {
    const bright = 255 - data[row + x]!;
    sums[x]! += bright;
    squares[x]! += bright * bright;
  }
}

/** Moves the window down by a row: one comes in, one goes; a negative row is outside the picture. */
function slide({ sums, squares }: Columns, data: Uint8Array, width: number, comes: number, goes: number) {
  const inside = comes * width;
  const outside = goes * width;
  for (let x = 0; x < width; x++) {
    const a = comes < 0 ? 0 : 255 - data[inside + x]!;
    const b = goes < 0 ? 0 : 255 - data[outside + x]!;
    sums[x]! += a - b;
    squares[x]! += (a - b) * (a + b);
  }
}
