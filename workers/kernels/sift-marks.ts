import { type WeighMarksArgs, weighMarks } from './despeckle.ts';

export interface SiftMarksArgs extends WeighMarksArgs {
  /** Marks with less ink go, px. */
  smallest: number;
  /** So many of those that go are told of one by one. */
  listed: number;
}

/** Marks with their ink and the pixels they lie within: `left..right`, `top..bottom`, both ends included. */
export interface MarkList {
  ink: Float64Array;
  left: Uint32Array;
  top: Uint32Array;
  right: Uint32Array;
  bottom: Uint32Array;
}

export interface SiftedMarks {
  /** One byte a label: 1 where the mark stays. */
  stays: Uint8Array;
  /** How many go, and their ink in px. */
  gone: number;
  goneInk: number;
  /** The largest of those that go, largest first; of equals the one that comes first in the picture. */
  largest: MarkList;
}

/** Tells the marks that stay from those that go; the time it takes grows with the picture alone. */
export function siftMarks(args: SiftMarksArgs): SiftedMarks {
  const { count, smallest } = args;
  const ink = weighMarks(args);
  const stays = new Uint8Array(count + 1);
  const small = new Uint32Array(count);
  let gone = 0;
  let goneInk = 0;
  for (let label = 1; label <= count; label++) {
    if (ink[label]! >= smallest) {
      stays[label] = 1;
      continue;
    }
    small[gone++] = label;
    goneInk += ink[label]!;
  }
  const chosen = heaviest(small.subarray(0, gone), ink, args.listed);
  return { stays, gone, goneInk, largest: boxesOf(chosen, ink, args) };
}

/** The `most` heaviest of `labels`, heaviest first. */
function heaviest(labels: Uint32Array, ink: Float64Array, most: number): Uint32Array {
  if (labels.length <= most) return labels.slice().sort(byInk(ink));
  const weights = Float64Array.from({ length: labels.length }, (_, i) => ink[labels[i]!]!).sort();
  const least = weights[labels.length - most]!;
  let equal = most - (labels.length - upperBound(weights, least));
  return labels
    .filter((label) => ink[label]! > least || (ink[label]! === least && equal-- > 0))
    .sort(byInk(ink));
}

function byInk(ink: Float64Array): (a: number, b: number) => number {
  return (a, b) => ink[b]! - ink[a]! || a - b;
}

/** How many of the rising `values` are at most `value`. */
function upperBound(values: Float64Array, value: number): number {
  let from = 0;
  let to = values.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (values[middle]! <= value) from = middle + 1;
    else to = middle;
  }
  return from;
}

function boxesOf(chosen: Uint32Array, ink: Float64Array, { labels, line, count }: SiftMarksArgs): MarkList {
  const { width } = line;
  const slots = new Uint32Array(count + 1);
  chosen.forEach((label, slot) => {
    slots[label] = slot + 1;
  });
  const left = new Uint32Array(chosen.length).fill(0xffffffff);
  const top = left.slice();
  const right = new Uint32Array(chosen.length);
  const bottom = right.slice();
  for (let i = 0; i < labels.length; i++) {
    if (labels[i] === 0 || slots[labels[i]!] === 0) continue;
    const slot = slots[labels[i]!]! - 1;
    const y = (i / width) | 0;
    const x = i - y * width;
    if (x < left[slot]!) left[slot] = x;
    if (x > right[slot]!) right[slot] = x;
    if (y < top[slot]!) top[slot] = y;
    if (y > bottom[slot]!) bottom[slot] = y;
  }
  return { ink: Float64Array.from(chosen, (label) => ink[label]!), left, top, right, bottom };
}
