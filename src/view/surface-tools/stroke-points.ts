import { simplifyBy } from '../region-tools/simplify.ts';
import type { DraftPoint } from './surface-store.ts';

/** More places than these say nothing that a hand meant. */
const MOST_POINTS = 2000;

/**
 * A drawn stroke with no more places than it needs: neither its line nor its rim moves farther than the tolerance.
 * Kept to a micrometre and a hundredth of the pressure.
 *
 * @param widthMm width where the hand presses fully
 * @param tolerance mm, above 0
 */
export function strokePoints(draft: readonly DraftPoint[], widthMm: number, tolerance: number): DraftPoint[] {
  const radius = widthMm / 2;
  const kept = simplifyBy(
    draft,
    tolerance,
    (place, from, to) => offSpan(place, from, to, radius),
    MOST_POINTS,
  );
  return kept.map(([x, y, press]) => [
    Math.round(x * 1000) / 1000,
    Math.round(y * 1000) / 1000,
    Math.round(press * 100) / 100,
  ]);
}

/** The greater of how far a place lies from a stretch, and how far its rim does. */
function offSpan(place: DraftPoint, from: DraftPoint, to: DraftPoint, radius: number): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long = dx * dx + dy * dy;
  const along = long === 0 ? 0 : ((place[0] - from[0]) * dx + (place[1] - from[1]) * dy) / long;
  const share = Math.min(1, Math.max(0, along));
  const aside = Math.hypot(place[0] - from[0] - share * dx, place[1] - from[1] - share * dy);
  const broader = Math.abs(place[2] - from[2] - share * (to[2] - from[2])) * radius;
  return Math.max(aside, broader);
}
