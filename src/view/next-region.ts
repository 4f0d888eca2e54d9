import type { MappedRegion } from '../../workers/client.ts';
import type { Point } from './camera.ts';

export type Direction = 'left' | 'right' | 'up' | 'down';

const WAYS: Record<Direction, Point> = {
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
};

/** A mm aside counts as so many mm ahead. */
const ASIDE = 2;

/**
 * The region whose anchor comes next in a direction: within a quarter turn of it, nearest first, what lies aside
 * counting double. Null when there is none.
 *
 * @param from the region to leave; it is never given back
 */
export function nextRegion(
  regions: readonly MappedRegion[],
  from: MappedRegion,
  direction: Direction,
): MappedRegion | null {
  const way = WAYS[direction];
  let best: MappedRegion | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const region of regions) {
    const x = region.anchorMm[0] - from.anchorMm[0];
    const y = region.anchorMm[1] - from.anchorMm[1];
    const ahead = x * way.x + y * way.y;
    const aside = Math.abs(x * way.y - y * way.x);
    const cost = ahead + ASIDE * aside;
    if (region.id === from.id || ahead <= 0 || aside > ahead || cost >= least) continue;
    best = region;
    least = cost;
  }
  return best;
}

/** The region whose anchor is nearest to a place, mm; null when there are none. */
export function nearestRegion(regions: readonly MappedRegion[], mm: Point): MappedRegion | null {
  const distance = ({ anchorMm: [x, y] }: MappedRegion) => Math.hypot(x - mm.x, y - mm.y);
  return regions.reduce<MappedRegion | null>(
    (best, region) => (best && distance(best) <= distance(region) ? best : region),
    null,
  );
}
