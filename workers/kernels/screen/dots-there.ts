import type { Plane } from '../plane.ts';

export interface DotsThere {
  /** Pixels that are neither paper nor solid, by those that are at least half covered. */
  between: number;
  /** Mean length of a run of ink along rows and along columns, the longer of both, px; 0 where there is none. */
  run: number;
}

/** Whether a plate already consists of dots: hardly a pixel between paper and solid, and short runs of ink. */
export function dotsThere({ plate: { width, data } }: { plate: Plane }): DotsThere {
  let between = 0;
  let ink = 0;
  let across = 0;
  let down = 0;
  for (let i = 0; i < data.length; i++) {
    const value = data[i]!;
    if (value > 0 && value < 255) between++;
    if (value < 128) continue;
    ink++;
    if (i % width === 0 || data[i - 1]! < 128) across++;
    if (i < width || data[i - width]! < 128) down++;
  }
  if (ink === 0) return { between: 0, run: 0 };
  return { between: between / ink, run: ink / Math.min(across, down) };
}
