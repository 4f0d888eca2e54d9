import type { LabelPlane, Plane } from './plane.ts';

export interface LabelEdgesArgs {
  labels: LabelPlane;
  /** Receives 255 on edges, else 0. */
  out: Plane;
}

/** Where regions end, for rows `from..to`: pixels of none, and those whose right or lower neighbour is of another. */
export function labelEdges(args: LabelEdgesArgs, from: number, to: number): void {
  const { width, height, data } = args.labels;
  const out = args.out.data;
  for (let y = from; y < to; y++) {
    const below = y + 1 < height ? width : 0;
    const last = (y + 1) * width - 1;
    for (let i = y * width; i <= last; i++) {
      const label = data[i]!;
      const right = i < last ? data[i + 1]! : label;
      out[i] = label === 0 || right !== label || data[i + below] !== label ? 255 : 0;
    }
  }
}
