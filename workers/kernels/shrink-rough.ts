import type { SharedBytes } from './plane.ts';

/** A colour sketch, ready to be looked at. */
export interface RoughPicture {
  width: number;
  height: number;
  /** `width * height * 4` bytes: red, green and blue as seen on white, and 255 where it is painted, 0 where not. */
  rgba: SharedBytes;
}

export interface ShrinkRoughArgs {
  /** `width * height * bands` bytes: grey, grey and alpha, RGB, or RGB and alpha; alpha straight. */
  pixels: Uint8Array;
  width: number;
  height: number;
  bands: number;
  /** Whole number of pixels of the picture to one of the result, each way. */
  scale: number;
  to: RoughPicture;
}

/** Less opaque than this is not painted. */
const PAINTED = 128;

/**
 * A picture at 1/scale, for target rows `from..to`: the mean of what is painted in each box; a box is painted when at
 * least half of it is. Transparent paint is seen on white, as its painter saw it.
 */
export function shrinkRough(args: ShrinkRoughArgs, from: number, to: number): void {
  const { pixels, width, height, bands, scale } = args;
  const target = args.to;
  const [green, blue] = bands >= 3 ? [1, 2] : [0, 0];
  const alpha = bands % 2 === 0 ? bands - 1 : -1;
  for (let row = from; row < to; row++)
    for (let column = 0; column < target.width; column++) {
      const bottom = Math.min(height, (row + 1) * scale);
      const right = Math.min(width, (column + 1) * scale);
      let [r, g, b, painted, count] = [0, 0, 0, 0, 0];
      for (let y = row * scale; y < bottom; y++)
        for (let x = column * scale; x < right; x++, count++) {
          const at = (y * width + x) * bands;
          const opaque = alpha < 0 ? 255 : pixels[at + alpha]!;
          if (opaque < PAINTED) continue;
          const white = 255 - opaque;
          r += opaque * pixels[at]! + white * 255;
          g += opaque * pixels[at + green]! + white * 255;
          b += opaque * pixels[at + blue]! + white * 255;
          painted++;
        }
      const o = (row * target.width + column) * 4;
      const shown = 2 * painted >= count && painted > 0;
      const share = 255 * painted;
      target.rgba[o] = shown ? Math.round(r / share) : 255;
      target.rgba[o + 1] = shown ? Math.round(g / share) : 255;
      target.rgba[o + 2] = shown ? Math.round(b / share) : 255;
      target.rgba[o + 3] = shown ? 255 : 0;
    }
}
