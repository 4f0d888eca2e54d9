import type { RegionMap } from '../../../workers/client.ts';
import type { RegionEdit } from '../../graph/region-edits.ts';
import type { Point } from '../camera.ts';
import { editPath } from './edit-places.ts';
import { distanceToSpan } from './simplify.ts';

export type Wall = RegionMap['walls'][number];
export type Gap = RegionMap['openGaps'][number];
export type PlaceMm = readonly [number, number];

/** Something of the regions that shows on the print beside them. */
export type Mark = { key: string; path: readonly Point[] } & (
  | { is: 'wall'; wall: Wall; openedBy: string | null }
  | { is: 'gap'; gap: Gap; rank: number }
  | { is: 'edit'; edit: RegionEdit }
);

type WallMark = Extract<Mark, { is: 'wall' }>;

export const pointOf = ([x, y]: PlaceMm): Point => ({ x, y });
export const gapKey = (place: number) => `gap ${place}`;
export const editKey = (id: string) => `edit ${id}`;

/**
 * Every wall and open gap of a map, and what was done by hand. An opening by hand shows at the wall it opens, from
 * the moment it is made; so does a wall that was stood again.
 */
export function marksOf(map: RegionMap, edits: readonly RegionEdit[]): Mark[] {
  const walls = map.walls.map(
    (wall, i): WallMark => ({
      is: 'wall',
      key: `wall ${i}`,
      path: wall.endsMm.map(pointOf),
      wall,
      openedBy: null,
    }),
  );
  const others: Mark[] = [];
  for (const edit of edits) {
    const opens = edit.does === 'open-wall' ? nearestMark(walls, pointOf(edit.atMm), OPENING_REACH_MM) : null;
    if (opens) Object.assign(opens, { openedBy: edit.id, key: editKey(edit.id) });
    else others.push({ is: 'edit', key: editKey(edit.id), path: editPath(edit), edit });
  }
  const gaps = map.openGaps.map(
    (gap, i): Mark => ({ is: 'gap', key: gapKey(i), path: [pointOf(gap.placeMm)], gap, rank: i }),
  );
  return [...walls, ...gaps, ...others];
}

/** How far from a wall an opening by hand still means it, mm: as far as when regions are found. */
const OPENING_REACH_MM = 1.5;

/** How far a place lies from a mark, mm. */
export function distanceTo(mark: Mark, mm: Point): number {
  const { path } = mark;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < path.length; i++)
    least = Math.min(least, distanceToSpan(mm, path[Math.max(0, i - 1)]!, path[i]!));
  return least;
}

/** The mark nearest to a place, of those that may be; null when none is within reach. */
export function nearestMark(
  marks: readonly Mark[],
  mm: Point,
  reachMm: number,
  mayBe: (mark: Mark) => boolean = () => true,
): Mark | null {
  let best: Mark | null = null;
  let least = reachMm;
  for (const mark of marks) {
    if (!mayBe(mark)) continue;
    const distance = distanceTo(mark, mm);
    if (distance > least || (best && distance === least)) continue;
    best = mark;
    least = distance;
  }
  return best;
}
