import type { Plane, SharedBytes } from './plane.ts';

export interface InterleaveArgs {
  /** All of one size. */
  planes: readonly Plane[];
  /** `width * height * planes` bytes, the planes of a pixel side by side. */
  to: SharedBytes;
}

/** Plates woven into one picture of many components, rows `from..to`. */
export function interleave(args: InterleaveArgs, from: number, to: number): void {
  const { planes, to: woven } = args;
  const count = planes.length;
  planes.forEach(({ width, data }, plane) => {
    for (let i = from * width; i < to * width; i++) woven[i * count + plane] = data[i]!;
  });
}
