import type { Plane } from './plane.ts';

export interface WithinArgs {
  before: Plane;
  after: Plane;
  /** 255 where the change holds, 0 where all stays as before, soft between. */
  mask: Plane;
  out: Plane;
}

/** Keeps a change within an area, for rows `from..to`. */
export function within(args: WithinArgs, from: number, to: number): void {
  const width = args.before.width;
  const before = args.before.data;
  const after = args.after.data;
  const mask = args.mask.data;
  const out = args.out.data;
  for (let i = from * width; i < to * width; i++)
    out[i] = ((before[i]! * (255 - mask[i]!) + after[i]! * mask[i]! + 127) / 255) | 0;
}
