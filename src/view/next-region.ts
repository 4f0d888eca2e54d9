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
 * The thing that comes next in a direction: within a quarter turn of it, nearest first, what lies aside counting
 * double. Null when there is none.
 *
 * @param from the place to leave; what lies right there is never given back
 */
export function nextThatWay<Thing>(
  things: readonly Thing[],
  placeOf: (thing: Thing) => readonly [number, number],
  from: Point,
  direction: Direction,
): Thing | null {
  const way = WAYS[direction];
  let best: Thing | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const thing of things) {
    const [toX, toY] = placeOf(thing);
    const x = toX - from.x;
    const y = toY - from.y;
    const ahead = x * way.x + y * way.y;
    const aside = Math.abs(x * way.y - y * way.x);
    const cost = ahead + ASIDE * aside;
    if (ahead <= 0 || aside > ahead || cost >= least) continue;
    best = thing;
    least = cost;
  }
  return best;
}

/** The thing that is nearest to a place; null when there are none. */
export function nearestTo<Thing>(
  things: readonly Thing[],
  placeOf: (thing: Thing) => readonly [number, number],
  mm: Point,
): Thing | null {
  const distance = (thing: Thing) => {
    const [x, y] = placeOf(thing);
    return Math.hypot(x - mm.x, y - mm.y);
  };
  return things.reduce<Thing | null>(
    (best, thing) => (best !== null && distance(best) <= distance(thing) ? best : thing),
    null,
  );
}

const anchorOf = ({ anchorMm }: MappedRegion) => anchorMm;

/** The region whose anchor comes next in a direction from another's; null when there is none. */
export function nextRegion(
  regions: readonly MappedRegion[],
  from: MappedRegion,
  direction: Direction,
): MappedRegion | null {
  const [x, y] = from.anchorMm;
  return nextThatWay(regions, anchorOf, { x, y }, direction);
}

/** The region whose anchor is nearest to a place, mm; null when there are none. */
export function nearestRegion(regions: readonly MappedRegion[], mm: Point): MappedRegion | null {
  return nearestTo(regions, anchorOf, mm);
}
