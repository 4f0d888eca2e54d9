import { layFade, type RegionFade } from './fade.ts';
import type { LabelPlane, Plane } from './plane.ts';

export interface FillArgs {
  labels: LabelPlane;
  plates: {
    out: Plane;
    /** Coverage by label; index 0 for pixels of no region. */
    tints: Uint8Array;
  }[];
  fades: readonly RegionFade[];
}

/** Lays each region's tint or fade on every plate, for rows `from..to`. */
export function fill(args: FillArgs, from: number, to: number): void {
  const { width } = args.labels;
  const labels = args.labels.data;
  for (let y = from; y < to; y++)
    for (const { out, tints } of args.plates) {
      const data = out.data;
      const end = (y + 1) * width;
      for (let i = y * width; i < end; i++) data[i] = tints[labels[i]!]!;
    }
  const planes = args.plates.map(({ out }) => out);
  for (const fade of args.fades) layFade(fade, args.labels, planes, from, to);
}
