import { squaredToSegment } from './area-mask.ts';
import type { Point } from './path.ts';
import type { LabelPlane, Plane } from './plane.ts';

/** A fade within one region; places in px from pixel corners. */
export interface RegionFade {
  label: number;
  shape: 'linear' | 'radial' | 'path';
  path: readonly Point[];
  /** Rows and columns of the region: left, top, right, bottom. */
  box: readonly [number, number, number, number];
  /** Coverage at the start and at the end, by plate. */
  from: Uint8Array;
  to: Uint8Array;
}

/** Lays a fade over the flat tints of its region, for rows `from..to` of plates as large as the labels. */
export function layFade(
  fade: RegionFade,
  { width, data }: LabelPlane,
  plates: readonly Plane[],
  from: number,
  to: number,
): void {
  const share = shareOf(fade);
  const [left, top, right, bottom] = fade.box;
  for (let y = Math.max(from, top); y < Math.min(to, bottom); y++)
    for (let x = Math.max(0, left); x < Math.min(width, right); x++) {
      const i = y * width + x;
      if (data[i] !== fade.label) continue;
      const at = share(x + 0.5, y + 0.5);
      plates.forEach((plate, p) => {
        plate.data[i] = Math.floor(fade.from[p]! + (fade.to[p]! - fade.from[p]!) * at + 0.5);
      });
    }
}

/** How far along a fade a place lies, 0..1. */
function shareOf({ shape, path }: RegionFade): (x: number, y: number) => number {
  const [ax, ay] = path[0]!;
  const [bx, by] = path.at(-1)!;
  const [dx, dy] = [bx - ax, by - ay];
  const long = dx * dx + dy * dy;
  const held = (share: number) => Math.min(1, Math.max(0, share));
  if (shape === 'path') return alongPath(path);
  if (long === 0) return () => 0;
  if (shape === 'linear') return (x, y) => held(((x - ax) * dx + (y - ay) * dy) / long);
  return (x, y) => held(Math.sqrt(((x - ax) * (x - ax) + (y - ay) * (y - ay)) / long));
}

/** Share of the path's length at its point nearest to a place; of equals the first. */
function alongPath(path: readonly Point[]): (x: number, y: number) => number {
  const lengths = path.slice(1).map(([x, y], k) => {
    const [px, py] = path[k]!;
    return Math.sqrt((x - px) * (x - px) + (y - py) * (y - py));
  });
  const starts = [0];
  for (const length of lengths) starts.push(starts.at(-1)! + length);
  const whole = starts.at(-1)!;
  if (whole === 0) return () => 0;
  return (x, y) => {
    let best = Infinity;
    let at = 0;
    for (let k = 0; k < lengths.length; k++) {
      const [ax, ay] = path[k]!;
      const [bx, by] = path[k + 1]!;
      const away = squaredToSegment(x, y, ax, ay, bx, by);
      if (away >= best || lengths[k] === 0) continue;
      best = away;
      const along = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / lengths[k]!;
      at = starts[k]! + Math.min(lengths[k]!, Math.max(0, along));
    }
    return at / whole;
  };
}
