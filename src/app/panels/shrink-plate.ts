import type { PlateThumbnail } from '../../../workers/client.ts';

/**
 * A plate's picture made small enough for a box, each pixel the mean of those it stands for, so that a tint stays a
 * tint. The same picture when it fits already.
 */
export function shrinkPlate(plate: PlateThumbnail, boxWidth: number, boxHeight: number): PlateThumbnail {
  const step = Math.max(1, Math.ceil(Math.max(plate.width / boxWidth, plate.height / boxHeight)));
  if (step === 1) return plate;
  const width = Math.ceil(plate.width / step);
  const height = Math.ceil(plate.height / step);
  const coverage = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) coverage[y * width + x] = meanOf(plate, x * step, y * step, step);
  return { width, height, coverage };
}

/** Mean of the square of `step` pixels from x, y on, as far as the picture reaches. */
function meanOf({ width, height, coverage }: PlateThumbnail, x: number, y: number, step: number): number {
  const right = Math.min(width, x + step);
  const foot = Math.min(height, y + step);
  let sum = 0;
  for (let row = y; row < foot; row++)
    for (let column = x; column < right; column++) sum += coverage[row * width + column]!;
  return Math.round(sum / ((right - x) * (foot - y)));
}
