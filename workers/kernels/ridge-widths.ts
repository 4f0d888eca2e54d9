import type { Plane } from './plane.ts';
import { AROUND } from './simple-points.ts';

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
  const steps = AROUND.map(([dx, dy]) => dy * width + dx);
  for (let y = 1; y + 1 < height; y++)
    for (let x = 1, i = y * width + 1; x + 1 < width; x++, i++) {
      const own = data[i]!;
      if (own === 0 || own === 255) continue;
      let lower = 0;
      let bit = 0;
      for (; bit < 8 && data[i + steps[bit]!]! <= own; bit++)
        if (data[i + steps[bit]!]! < own) lower |= 1 << bit;
      if (bit < 8 || lower === 0) continue;
      const sharp = (lower & (lower >> 4)) !== 0;
      counts[2 * own + (sharp ? 0 : 1)]!++;
    }
  return counts;
}
