import { wordsOf } from './byte-runs.ts';

/** "No site within reach" in a plane of vertical distances. */
export const FAR = 0xffff;

export interface ColumnDistanceArgs {
  data: Uint8Array;
  width: number;
  height: number;
  /** Sites are the pixels whose byte lies in `lowest..highest`. */
  lowest: number;
  highest: number;
  /** Distances above this are FAR; at most 65534. */
  limit: number;
  /** Whether a row of sites lies just above and below the picture. */
  framed: boolean;
  /** Receives the distance in px to the nearest site of the same column. */
  out: Uint16Array;
}

/** First half of an exact distance: along each of the columns `from..to`. */
export function columnDistance(args: ColumnDistanceArgs, from: number, to: number): void {
  const { data, width, height, lowest, limit, out } = args;
  const span = args.highest - lowest;
  const words = wordsOf(data);
  const edge = args.framed ? 0 : FAR;
  const ofWhite = lowest === 0 ? 0 : FAR;
  const ofBlack = args.highest === 255 ? 0 : FAR;
  for (let y = 0; y < height; y++) {
    const end = y * width + to;
    for (let i = y * width + from; i < end; ) {
      if (words !== null && y > 0 && (i & 3) === 0 && i + 4 <= end) {
        const word = words[i >> 2]!;
        const all = word === 0 ? ofWhite : word === 0xffffffff ? ofBlack : -1;
        if (all === 0 || (all === FAR && areFar(out, i - width))) {
          out[i] = out[i + 1] = out[i + 2] = out[i + 3] = all;
          i += 4;
          continue;
        }
      }
      const stop = Math.min(end, i + 4 - (i & 3));
      for (; i < stop; i++) {
        const above = y === 0 ? edge : out[i - width]!;
        out[i] = (data[i]! - lowest) >>> 0 <= span ? 0 : above >= limit ? FAR : above + 1;
      }
    }
  }
  for (let y = height - 1; y >= 0; y--) {
    const end = y * width + to;
    for (let i = y * width + from; i < end; i++) {
      const here = out[i]!;
      if (here < 2 && y < height - 1) continue;
      const below = y === height - 1 ? edge : out[i + width]!;
      if (below < limit && below + 1 < here) out[i] = below + 1;
    }
  }
}

function areFar(distances: Uint16Array, i: number): boolean {
  return (
    distances[i] === FAR && distances[i + 1] === FAR && distances[i + 2] === FAR && distances[i + 3] === FAR
  );
}

export interface SquaredDistanceArgs {
  /** From `columnDistance` with `framed` and no limit that bites. */
  columns: Uint16Array;
  width: number;
  /** Receives the squared distance in px2 to the nearest site; 0 on sites. */
  out: Uint32Array;
}

/**
 * Second half: exact squared Euclidean distances of rows `from..to`, a column of sites standing just left and
 * right of the picture. Lower envelope of parabolas, for each run between sites: Felzenszwalb & Huttenlocher,
 * "Distance transforms of sampled functions", Theory of Computing 8 (2012); Meijster et al. 2000.
 */
export function squaredDistance(args: SquaredDistanceArgs, from: number, to: number): void {
  const { columns, width, out } = args;
  const vertex = new Int32Array(width + 2);
  const height = new Float64Array(width + 2);
  const start = new Float64Array(width + 3);
  for (let y = from; y < to; y++) {
    const row = y * width;
    let x = 0;
    while (x < width) {
      if (columns[row + x] === 0) {
        out[row + x++] = 0;
        continue;
      }
      const first = x;
      while (x < width && columns[row + x] !== 0) x++;
      envelope(columns, out, row, first, x, vertex, height, start);
    }
  }
}

function envelope(
  columns: Uint16Array,
  out: Uint32Array,
  row: number,
  first: number,
  end: number,
  vertex: Int32Array,
  height: Float64Array,
  start: Float64Array,
): void {
  let top = 0;
  vertex[0] = first - 1;
  height[0] = 0;
  start[0] = Number.NEGATIVE_INFINITY;
  for (let q = first; q <= end; q++) {
    const g = q === end ? 0 : columns[row + q]!;
    const f = g * g;
    let meet = (f + q * q - height[top]! - vertex[top]! * vertex[top]!) / (2 * (q - vertex[top]!));
    while (meet <= start[top]!) {
      top--;
      meet = (f + q * q - height[top]! - vertex[top]! * vertex[top]!) / (2 * (q - vertex[top]!));
    }
    top++;
    vertex[top] = q;
    height[top] = f;
    start[top] = meet;
  }
  start[top + 1] = Number.POSITIVE_INFINITY;
  let k = 0;
  for (let q = first; q < end; q++) {
    while (start[k + 1]! < q) k++;
    const dx = q - vertex[k]!;
    out[row + q] = dx * dx + height[k]!;
  }
}
