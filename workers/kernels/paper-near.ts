import type { Plane } from './plane.ts';

export interface PaperNearArgs {
  /** From `inkShare`. */
  share: Plane;
  /** Receives 255 at the edge of ink, falling to 0 where the window holds nothing but ink. */
  out: Plane;
}

/** How near the edge of ink a pixel of it lies, for rows `from..to`: at a straight edge half the window is bare. */
export function paperNear(args: PaperNearArgs, from: number, to: number): void {
  const share = args.share.data;
  const out = args.out.data;
  const { width } = args.share;
  for (let i = from * width; i < to * width; i++) out[i] = Math.min(255, 2 * (255 - share[i]!));
}
