import type { LabelPlane, Plane } from './plane.ts';

export interface ReduceCoverageArgs {
  from: Plane;
  to: Plane;
  /** Whole number of source pixels to one target pixel, each way. */
  scale: number;
}

/** Box means, for target rows `from..to`; a box cut off by the edge averages what is there. */
export function reduceCoverage(args: ReduceCoverageArgs, from: number, to: number): void {
  const { scale } = args;
  const source = args.from;
  const target = args.to;
  for (let y = from; y < to; y++)
    for (let x = 0; x < target.width; x++) {
      const right = Math.min(source.width, (x + 1) * scale);
      const bottom = Math.min(source.height, (y + 1) * scale);
      let sum = 0;
      for (let sy = y * scale; sy < bottom; sy++)
        for (let sx = x * scale; sx < right; sx++) sum += source.data[sy * source.width + sx]!;
      const pixels = (right - x * scale) * (bottom - y * scale);
      target.data[y * target.width + x] = ((sum + pixels / 2) / pixels) | 0;
    }
}

export interface ReduceLabelsArgs {
  from: LabelPlane;
  to: LabelPlane;
  scale: number;
}

/** Samples at box centres, for target rows `from..to`. */
export function reduceLabels(args: ReduceLabelsArgs, from: number, to: number): void {
  const { scale } = args;
  const source = args.from;
  const target = args.to;
  const half = scale >> 1;
  for (let y = from; y < to; y++) {
    const row = Math.min(source.height - 1, y * scale + half) * source.width;
    for (let x = 0; x < target.width; x++)
      target.data[y * target.width + x] = source.data[row + Math.min(source.width - 1, x * scale + half)]!;
  }
}
