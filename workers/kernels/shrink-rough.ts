export interface ShrinkRoughArgs {
  /** `width * height * bands` bytes: grey, grey and alpha, RGB, or RGB and alpha. */
  pixels: Uint8Array;
  width: number;
  height: number;
  bands: number;
  /** Pixels of the picture to one of the result, each way. */
  scale: number;
}

/** A picture as RGB and alpha. */
export interface RoughPicture {
  width: number;
  height: number;
  /** `width * height * 4` bytes. */
  rgba: Uint8Array;
}

/** A picture at 1/scale: means of boxes, colours by how opaque they are. */
export function shrinkRough({ pixels, width, height, bands, scale }: ShrinkRoughArgs): RoughPicture {
  const toWidth = Math.ceil(width / scale);
  const toHeight = Math.ceil(height / scale);
  const rgba = new Uint8Array(toWidth * toHeight * 4);
  const [g, b] = bands >= 3 ? [1, 2] : [0, 0];
  const alpha = bands % 2 === 0 ? bands - 1 : -1;
  for (let row = 0; row < toHeight; row++) {
    const bottom = Math.min(height, (row + 1) * scale);
    for (let column = 0; column < toWidth; column++) {
      const right = Math.min(width, (column + 1) * scale);
      let red = 0;
      let green = 0;
      let blue = 0;
      let opaque = 0;
      let count = 0;
      for (let y = row * scale; y < bottom; y++)
        for (let x = column * scale; x < right; x++) {
          const at = (y * width + x) * bands;
          const weight = alpha < 0 ? 255 : pixels[at + alpha]!;
          red += weight * pixels[at]!;
          green += weight * pixels[at + g]!;
          blue += weight * pixels[at + b]!;
          opaque += weight;
          count++;
        }
      const to = (row * toWidth + column) * 4;
      rgba[to + 3] = Math.round(opaque / count);
      if (opaque === 0) continue;
      rgba[to] = Math.round(red / opaque);
      rgba[to + 1] = Math.round(green / opaque);
      rgba[to + 2] = Math.round(blue / opaque);
    }
  }
  return { width: toWidth, height: toHeight, rgba };
}
