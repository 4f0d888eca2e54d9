import { dominantFinder } from './dominant-colour.ts';
import type { Affine } from './offset.ts';
import type { RoughPicture } from './shrink-rough.ts';

export interface RoughColoursArgs {
  /** Labels 1..count, 0 none. */
  labels: Uint32Array;
  width: number;
  height: number;
  count: number;
  /** Squared distance of each pixel to the edge of its region, px2; what is far beyond `inward` may be any greater value. */
  distance2: Uint16Array | Uint32Array;
  /** How far from its edge the colour of a region is taken, where it is wide enough, px. */
  inward: number;
  rough: RoughPicture;
  /** Where a pixel of the drawing lies on the rough. */
  place: Affine;
}

/** Of larger regions every so manieth pixel is looked at that at most this many are. */
const MOST_SAMPLES = 2048;
/** Part of a region that must be painted in the rough to give it a colour. */
const LEAST_PAINTED = 0.2;

/**
 * The colour of each region in a rough: taken away from its edge, where the drawing and the rough have their lines, by
 * `inward` or, in a narrow region, half as far as it is deep; see `dominantFinder`.
 *
 * @returns by label: red, green, blue as 0xrrggbb; -1 where less than a fifth is painted; index 0 unused
 */
export function roughColours(args: RoughColoursArgs): Int32Array {
  const { labels, distance2, count } = args;
  const least = depthsOf(args);
  const inner = new Uint32Array(count + 1);
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i]!;
    if (distance2[i]! >= least[label]!) inner[label]!++;
  }
  const stride = inner.map((many) => Math.ceil(many / MOST_SAMPLES));
  const start = new Uint32Array(count + 2);
  for (let label = 1; label <= count; label++)
    start[label + 1] = start[label]! + (inner[label] === 0 ? 0 : Math.ceil(inner[label]! / stride[label]!));
  const samples = new Uint32Array(start[count + 1]!);
  const painted = paintedSamples(args, least, stride, start, samples);
  const dominant = dominantFinder();
  const colours = new Int32Array(count + 1).fill(-1);
  for (let label = 1; label <= count; label++) {
    const many = painted[label]!;
    if (many === 0 || many < LEAST_PAINTED * (start[label + 1]! - start[label]!)) continue;
    colours[label] = dominant(samples.subarray(start[label]!, start[label]! + many));
  }
  return colours;
}

/** By label the squared distance from which on pixels count. */
function depthsOf({ labels, distance2, inward, count }: RoughColoursArgs): Float64Array {
  const deepest = new Float64Array(count + 1);
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i]!;
    if (distance2[i]! > deepest[label]!) deepest[label] = distance2[i]!;
  }
  return deepest.map((d2) => Math.min(inward * inward, d2 / 4));
}

/** Fills in what the rough shows, from each label's `start` on; returns how many of its samples are painted. */
function paintedSamples(
  { labels, width, distance2, rough, place }: RoughColoursArgs,
  least: Float64Array,
  stride: Uint32Array,
  start: Uint32Array,
  samples: Uint32Array,
): Uint32Array {
  const { xx, xy, x0, yx, yy, y0 } = place;
  const { rgba } = rough;
  const seen = new Uint32Array(stride.length);
  const painted = new Uint32Array(stride.length);
  for (let i = 0, x = 0, y = 0; i < labels.length; i++, x++) {
    if (x === width) [x, y] = [0, y + 1];
    const label = labels[i]!;
    if (label === 0 || distance2[i]! < least[label]!) continue;
    if (seen[label]!++ % stride[label]! !== 0) continue;
    const column = Math.floor(xx * x + xy * y + x0);
    const row = Math.floor(yx * x + yy * y + y0);
    if (column < 0 || row < 0 || column >= rough.width || row >= rough.height) continue;
    const at = (row * rough.width + column) * 4;
    if (rgba[at + 3] === 0) continue;
    samples[start[label]! + painted[label]!++] = (rgba[at]! << 16) | (rgba[at + 1]! << 8) | rgba[at + 2]!;
  }
  return painted;
}
