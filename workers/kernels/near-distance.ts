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
  const { columns, width, limit2, distance2, zones } = args;
  const near2 = Math.floor(args.near2);
  const envelope = {
    vertex: new Int32Array(width + 2),
    height: new Int32Array(width + 2),
    start: new Float64Array(width + 3),
  };
  const { vertex, height, start } = envelope;
  for (let y = from; y < to; y++) {
    const row = y * width;
    for (let x = 0; x < width; ) {
      if (columns[row + x] === 0) {
        distance2[row + x] = 0;
        zones[row + x++] = ON_LINE;
        continue;
      }
      let q = x;
      x = raise(envelope, columns, row, x, width);
      for (let k = 0; q < x; ) {
        while (start[k + 1]! < q) k++;
        const v = vertex[k]!;
        const d2 = (q - v) * (q - v) + height[k]!;
        if (d2 <= limit2) {
          distance2[row + q] = d2;
          zones[row + q++] = d2 <= near2 ? NEAR : DEEP;
          continue;
        }
        const end = Math.min(x, Math.floor(start[k + 1]!) + 1);
        const reach = height[k]! > limit2 ? -1 : Math.floor(Math.sqrt(limit2 - height[k]!));
        const next = q < v ? Math.min(end, Math.max(q + 1, v - reach)) : end;
        fillBeyond(distance2, zones, row + q, row + next);
        q = next;
      }
    }
  }
}

interface Envelope {
  vertex: Int32Array;
  height: Int32Array;
  /** Where each parabola becomes the lowest; one more entry, infinite, ends the list. */
  start: Float64Array;
}

/** Envelope over the run of free columns from `first` on and a site on either side; returns where the run ends. */
function raise(envelope: Envelope, columns: Uint16Array, row: number, first: number, width: number): number {
  const { vertex, height, start } = envelope;
  let top = 0;
  vertex[0] = first - 1;
  height[0] = 0;
  start[0] = Number.NEGATIVE_INFINITY;
  let q = first;
  for (let ended = false; !ended; q++) {
    while (q < width && columns[row + q] === FAR) q++;
    const g = q < width ? columns[row + q]! : 0;
    ended = g === 0;
    const f = g * g;
    let meet = meetingOf(q, f, vertex[top]!, height[top]!);
    while (meet <= start[top]!) {
      top--;
      meet = meetingOf(q, f, vertex[top]!, height[top]!);
    }
    top++;
    vertex[top] = q;
    height[top] = f;
    start[top] = meet;
  }
  start[top + 1] = Number.POSITIVE_INFINITY;
  return q - 1;
}

/** Where the parabola over `q` with its foot at `f` meets an earlier one. */
function meetingOf(q: number, f: number, v: number, height: number): number {
  return (f - height) / (2 * (q - v)) + (q + v) / 2;
}

function fillBeyond(distance2: Uint16Array | Uint32Array, zones: Uint8Array, from: number, to: number): void {
  distance2.fill(0xffffffff, from, to);
  zones.fill(BEYOND, from, to);
}
