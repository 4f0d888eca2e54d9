import type { SharedBytes } from './plane.ts';

export interface ShrinkProofArgs {
  /** RGB, 3 bytes a pixel. */
  from: SharedBytes;
  width: number;
  height: number;
  /** RGB, or RGB and straight alpha when `ground` is given. */
  to: SharedBytes;
  /** At most `width` and `height`. */
  toWidth: number;
  toHeight: number;
  /** Linear light 0..1 of each screen byte. */
  light: Float64Array;
  /** Screen bytes for linear light 0..1 in equal steps. */
  encoding: Uint8Array;
  /** RGB of the bare paper, to be taken away; null leaves the paper in the picture. */
  ground: readonly [number, number, number] | null;
}

/** A channel this near to the ground is the ground. */
const SAME = 1;

/**
 * Box means of a picture, for target rows `from..to`, in linear light; a source pixel that a box's edge cuts counts by
 * its share.
 *
 * With a ground, what is left is the ink alone: alpha = 1 - the least of pixel / ground over the channels, and the
 * colour c that lies over the ground as the pixel does: pixel = alpha c + (1 - alpha) ground.
 */
export function shrinkProof(args: ShrinkProofArgs, from: number, to: number): void {
  const { width, height, toWidth, toHeight, light, encoding, ground } = args;
  const source = args.from;
  const target = args.to;
  const bands = ground ? 4 : 3;
  const last = encoding.length - 1;
  const share = (width * height) / (toWidth * toHeight);
  const columns = new Float64Array(width * 3);
  const sum = new Float64Array(3);
  for (let y = from; y < to; y++) {
    addRows((y * height) / toHeight, ((y + 1) * height) / toHeight);
    for (let x = 0; x < toWidth; x++) {
      addColumns((x * width) / toWidth, ((x + 1) * width) / toWidth);
      const o = (y * toWidth + x) * bands;
      for (let c = 0; c < 3; c++)
        target[o + c] = encoding[Math.min(last, ((sum[c]! / share) * last + 0.5) | 0)]!;
      if (ground) liftOff(target, o, ground);
    }
  }

  function addRows(top: number, bottom: number): void {
    columns.fill(0);
    for (let row = Math.floor(top); row < Math.min(height, bottom); row++) {
      const weight = Math.min(row + 1, bottom) - Math.max(row, top);
      const start = row * width * 3;
      for (let i = 0; i < columns.length; i++) columns[i]! += weight * light[source[start + i]!]!;
    }
  }

  function addColumns(left: number, right: number): void {
    sum.fill(0);
    for (let column = Math.floor(left); column < Math.min(width, right); column++) {
      const weight = Math.min(column + 1, right) - Math.max(column, left);
      for (let c = 0; c < 3; c++) sum[c]! += weight * columns[column * 3 + c]!;
    }
  }
}

/** Takes the ground out of one pixel. */
function liftOff(pixels: SharedBytes, o: number, ground: readonly [number, number, number]): void {
  let least = 1;
  let same = true;
  for (let c = 0; c < 3; c++) {
    const value = pixels[o + c]!;
    least = Math.min(least, value / Math.max(1, ground[c]!));
    if (Math.abs(value - ground[c]!) > SAME) same = false;
  }
  const alpha = same ? 0 : Math.round(255 * (1 - least));
  for (let c = 0; c < 3; c++) {
    const over = alpha === 0 ? 0 : (255 * pixels[o + c]! - (255 - alpha) * ground[c]!) / alpha;
    pixels[o + c] = Math.min(255, Math.max(0, Math.round(over)));
  }
  pixels[o + 3] = alpha;
}
