import type { Plane } from './plane.ts';

export interface WeighMarksArgs {
  labels: Uint32Array;
  line: Plane;
  count: number;
}

/** Ink of each mark: the sum of its coverage / 255, in px; index = label. */
export function weighMarks(args: WeighMarksArgs): Float64Array {
  const { labels } = args;
  const { data } = args.line;
  const ink = new Float64Array(args.count + 1);
  for (let i = 0; i < data.length; i++) if (data[i] !== 0) ink[labels[i]!]! += data[i]!;
  for (let label = 0; label <= args.count; label++) ink[label]! /= 255;
  return ink;
}

export interface EraseMarksArgs {
  labels: Uint32Array;
  line: Plane;
  /** One byte a label: 1 where the mark stays. */
  stays: Uint8Array;
  out: Plane;
}

/** Copies rows `from..to` without the marks that go. */
export function eraseMarks(args: EraseMarksArgs, from: number, to: number): void {
  const { labels, stays } = args;
  const { width, data } = args.line;
  const out = args.out.data;
  for (let i = from * width; i < to * width; i++) {
    const value = data[i]!;
    out[i] = value !== 0 && stays[labels[i]!] === 1 ? value : 0;
  }
}
