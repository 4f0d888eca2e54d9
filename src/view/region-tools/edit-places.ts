import type { Complaint } from '../../graph/complaint.ts';
import type { RegionEdit } from '../../graph/region-edits.ts';
import type { Point } from '../camera.ts';

/** The places a hand edit was made at, mm: a path, two places, or one. */
export function editPath(edit: RegionEdit): Point[] {
  const places =
    edit.does === 'draw-wall' || edit.does === 'cut'
      ? edit.pathMm
      : edit.does === 'join'
        ? [edit.fromMm, edit.toMm]
        : [edit.atMm];
  return places.map(([x, y]) => ({ x, y }));
}

/** The place that lies half way along a path. */
export function middleOf(path: readonly Point[]): Point {
  const lengths = path.slice(1).map(({ x, y }, i) => Math.hypot(x - path[i]!.x, y - path[i]!.y));
  let left = lengths.reduce((sum, length) => sum + length, 0) / 2;
  for (let i = 0; i < lengths.length; i++) {
    const length = lengths[i]!;
    if (left > length) {
      left -= length;
      continue;
    }
    const [from, to] = [path[i]!, path[i + 1]!];
    const share = length === 0 ? 0 : left / length;
    return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  }
  return path.at(-1)!;
}

/** Where to look for a hand edit, mm. */
export function placeOf(edit: RegionEdit): Point {
  return middleOf(editPath(edit));
}

/** A complaint of an edit names its place at most so far off, mm. */
const SAME_PLACE_MM = 0.5;

/** What is complained of each hand edit, by its id: a complaint names the place, the edit nearest to it is meant. */
export function complaintsByEdit(
  edits: readonly RegionEdit[],
  complaints: readonly Complaint[],
): Map<string, Complaint> {
  const found = new Map<string, Complaint>();
  for (const complaint of complaints) {
    if (!complaint.code.startsWith('edit-') || !complaint.placeMm) continue;
    const [x, y] = complaint.placeMm;
    const farFrom = (edit: RegionEdit) =>
      Math.min(...[placeOf(edit), ...editPath(edit)].map((at) => Math.hypot(at.x - x, at.y - y)));
    const open = edits.filter((edit) => !found.has(edit.id) && farFrom(edit) <= SAME_PLACE_MM);
    const [nearest] = open.toSorted((a, b) => farFrom(a) - farFrom(b));
    if (nearest) found.set(nearest.id, complaint);
  }
  return found;
}
