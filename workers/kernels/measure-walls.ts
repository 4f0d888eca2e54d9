import { narrowest } from './narrowest.ts';
import type { Walls } from './walls.ts';

export interface MeasureWallsArgs {
  line: Uint8Array;
  width: number;
  height: number;
  /** Line is coverage from here on. */
  threshold: number;
  walls: Walls;
}

/** Walls as wide as the free way from line to line: what the distance map says is up to 2 px less. */
export function measureWalls(args: MeasureWallsArgs): Walls {
  const { walls } = args;
  const width = walls.width.map((about, k) => {
    const at = walls.place[k]!;
    const place = [(at % args.width) + 0.5, Math.floor(at / args.width) + 0.5] as const;
    return narrowest(args, place, about * 0.6 + 4).width;
  });
  return { ...walls, width };
}
