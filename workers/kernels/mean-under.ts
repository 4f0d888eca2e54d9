import type { Plane } from './plane.ts';

export interface MeanUnderArgs {
  plane: Plane;
  /** Counts where it is 255. */
  mask: Plane;
}

/** Mean of a plane where a mask is solid, 0..255; null where it nowhere is. */
export function meanUnder({ plane, mask }: MeanUnderArgs): number | null {
  const { data } = plane;
  const { data: marks } = mask;
  let sum = 0;
  let count = 0;
  for (let i = 0; i < data.length; i++) {
    if (marks[i] !== 255) continue;
    sum += data[i]!;
    count++;
  }
  return count === 0 ? null : sum / count;
}
