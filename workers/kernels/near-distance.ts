import { FAR } from './distance.ts';

/** What a pixel is to the search for necks. */
export const ON_LINE = 0;
/** Free, and so near the line that it may lie in a neck. */
export const NEAR = 1;
/** Free, and farther from the line than half the gap. */
export const DEEP = 2;
/** Farther still: its distance is not known, it is beyond the limit. */
export const BEYOND = 3;

export interface NearDistanceArgs {
  /** From `columnDistance`, framed, with a limit of at least `sqrt(limit2)`. */
  columns: Uint16Array;
  width: number;
  /** Squared half gap, px2: up to it a pixel is NEAR. */
  near2: number;
  /** Squared limit, px2, at least `near2`: above it a pixel is BEYOND. */
  limit2: number;
  /** Receives the squared distance in px2 to the nearest site; 0 on sites, the type's greatest value beyond the limit. */
  distance2: Uint16Array | Uint32Array;
  /** Receives ON_LINE, NEAR, DEEP or BEYOND. */
  zones: Uint8Array;
}

/**
 * Exact squared distances up to a limit, for rows `from..to`, a column of sites standing just left and right of the
 * picture. Lower envelope of parabolas as in `squaredDistance`; columns that are far from any site have none.
 */
export function nearDistance(args: NearDistanceArgs, from: number, to: number): void {
  const { columns, width, near2, limit2, distance2, zones } = args;
  const vertex = new Int32Array(width + 2);
  const height = new Float64Array(width + 2);
  const start = new Float64Array(width + 3);
  for (let y = from; y < to; y++) {
    const row = y * width;
    let x = 0;
    while (x < width) {
      if (columns[row + x] === 0) {
        distance2[row + x] = 0;
        zones[row + x++] = ON_LINE;
        continue;
      }
      const first = x;
      while (x < width && columns[row + x] !== 0) x++;
      const top = envelopeOf(columns, row, first, x, vertex, height, start);
      let q = first;
      for (let k = 0; k <= top; k++) {
        const v = vertex[k]!;
        const f = height[k]!;
        const end = k === top ? x : Math.min(x, Math.ceil(start[k + 1]!));
        const reach = f > limit2 ? -1 : Math.floor(Math.sqrt(limit2 - f));
        const near = Math.min(end, Math.max(q, v - reach));
        const far = Math.max(near, Math.min(end, v + reach + 1));
        if (near > q) fillBeyond(distance2, zones, row + q, row + near);
        for (q = near; q < far; q++) {
          const d2 = (q - v) * (q - v) + f;
          distance2[row + q] = d2;
          zones[row + q] = d2 <= near2 ? NEAR : DEEP;
        }
        if (end > q) fillBeyond(distance2, zones, row + q, row + end);
        q = Math.max(q, end);
      }
    }
  }
}

function fillBeyond(distance2: Uint16Array | Uint32Array, zones: Uint8Array, from: number, to: number): void {
  distance2.fill(0xffffffff, from, to);
  zones.fill(BEYOND, from, to);
}

/** Envelope over the columns `first..end` of one row and a site on either side; returns the index of the last. */
function envelopeOf(
  columns: Uint16Array,
  row: number,
  first: number,
  end: number,
  vertex: Int32Array,
  height: Float64Array,
  start: Float64Array,
): number {
  let top = 0;
  vertex[0] = first - 1;
  height[0] = 0;
  start[0] = Number.NEGATIVE_INFINITY;
  for (let q = first; q <= end; q++) {
    const g = q === end ? 0 : columns[row + q]!;
    if (g === FAR) continue;
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
  return top;
}
