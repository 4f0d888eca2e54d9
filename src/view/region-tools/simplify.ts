import type { Point } from '../camera.ts';

/** More corners than these say nothing that a hand meant. */
const MOST_CORNERS = 400;

/** How far a place lies from the stretch between two others. */
type Distance<Place> = (place: Place, from: Place, to: Place) => number;

/**
 * A drawn path with no more corners than it needs: none of its places lies farther from the result than the
 * tolerance, which grows for paths that would keep too many. Ends stay where they are.
 *
 * Douglas & Peucker 1973.
 *
 * @param tolerance in the unit of the places, above 0
 */
export function simplify(path: readonly Point[], tolerance: number): Point[] {
  return simplifyBy(path, tolerance, distanceToSpan, MOST_CORNERS);
}

/** The same for places of any kind, whose distance from a stretch is told. */
export function simplifyBy<Place>(
  path: readonly Place[],
  tolerance: number,
  distance: Distance<Place>,
  most: number,
): Place[] {
  let corners = cornersOf(path, tolerance, distance);
  for (let wider = tolerance * 1.5; corners.length > most; wider *= 1.5)
    corners = cornersOf(path, wider, distance);
  return corners;
}

function cornersOf<Place>(path: readonly Place[], tolerance: number, distance: Distance<Place>): Place[] {
  if (path.length < 3) return [...path];
  const kept = new Uint8Array(path.length);
  kept[0] = 1;
  kept[path.length - 1] = 1;
  const spans: [number, number][] = [[0, path.length - 1]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [first, last] = span;
    const far = farthest(path, first, last, distance);
    if (far.distance <= tolerance) continue;
    kept[far.at] = 1;
    spans.push([first, far.at], [far.at, last]);
  }
  return path.filter((_, i) => kept[i] === 1);
}

function farthest<Place>(
  path: readonly Place[],
  first: number,
  last: number,
  distanceOf: Distance<Place>,
): { at: number; distance: number } {
  let at = first;
  let distance = 0;
  for (let i = first + 1; i < last; i++) {
    const off = distanceOf(path[i]!, path[first]!, path[last]!);
    if (off <= distance) continue;
    distance = off;
    at = i;
  }
  return { at, distance };
}

/** How far a place lies from a straight stretch. */
export function distanceToSpan(place: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : ((place.x - from.x) * dx + (place.y - from.y) * dy) / length2;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(place.x - from.x - share * dx, place.y - from.y - share * dy);
}
