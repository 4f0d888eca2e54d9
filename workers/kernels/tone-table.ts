import type { Plane } from './plane.ts';

export interface ToneTableArgs {
  from: Plane;
  to: Plane;
  /** 256 bytes. */
  table: Uint8Array;
}

/** Sends every pixel of rows `from..to` through a table. */
export function toneTable(args: ToneTableArgs, from: number, to: number): void {
  const { table } = args;
  const source = args.from.data;
  const target = args.to.data;
  const width = args.from.width;
  for (let i = from * width; i < to * width; i++) target[i] = table[source[i]!]!;
}

/**
 * The table of a soft threshold: what lies above `level` becomes 128 or more, with a ramp of `softness` (0..1) of
 * the `room` there is on either side; 1 leaves an evenly scanned drawing nearly as it was.
 *
 * @param room levels; up to black or white on the narrower side when it is left out
 */
export function softThreshold(level: number, softness: number, room?: number): Uint8Array {
  const middle = level + 0.5;
  const half = (room ?? Math.min(middle, 255 - middle)) * softness;
  const table = new Uint8Array(256);
  for (let v = 0; v < 256; v++) {
    const hard = v > level ? 255 : 0;
    const soft = half < 0.5 ? hard : Math.min(255, Math.max(0, 127.5 + ((v - middle) / half) * 127.5));
    table[v] = Math.round(soft);
  }
  return table;
}
