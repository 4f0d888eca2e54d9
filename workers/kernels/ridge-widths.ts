import type { Plane } from './plane.ts';
import { NO_RIDGE, ridgeAt, ringSteps, SHARP } from './ridge.ts';

export interface RidgeWidthsArgs {
  /** Distance of every pixel from the paper, in steps; 0 on paper, 255 for farther than is measured. */
  depth: Plane;
}

/**
 * How often the middle of a line lies at each depth: `counts[2 * depth]` where it is one pixel across, so that the
 * line is two depths wide less a pixel, and `counts[2 * depth + 1]` where it is two, and the line two depths wide.
 */
export function ridgeWidths(args: RidgeWidthsArgs): Uint32Array {
  const { width, height, data } = args.depth;
  const counts = new Uint32Array(512);
  const steps = ringSteps(width);
  for (let y = 1; y + 1 < height; y++)
    for (let x = 1, i = y * width + 1; x + 1 < width; x++, i++) {
      const ridge = ridgeAt(data, i, steps);
      if (ridge !== NO_RIDGE) counts[2 * data[i]! + (ridge === SHARP ? 0 : 1)]!++;
    }
  return counts;
}
