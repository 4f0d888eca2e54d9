import type { ToolSet } from '../../app/registry.ts';
import type { Job } from '../../graph/job.ts';
import { areaAtHand, areaSettings } from '../../store/areas.ts';
import { fadesOf } from '../../store/fades.ts';
import { marksAtHand, marksOf } from '../../store/hand-marks.ts';
import { useJobState, useView } from '../../store/hooks.ts';
import { jobStore } from '../../store/job-store.ts';
import { viewStore } from '../../store/view-store.ts';
import type { Point } from '../camera.ts';
import { pointOf } from '../region-tools/marks.ts';
import { distanceToSpan } from '../region-tools/simplify.ts';

/** What lies over regions and is edited on the print. */
export type SurfaceSet = Extract<ToolSet, 'areas' | 'marks' | 'fades' | 'nudge'>;

/** A shape of an area, a stroke or a fade. */
export interface Thing {
  /** Id of the shape or stroke, or of the region that fades. */
  key: string;
  /** mm on the sheet. */
  path: readonly Point[];
  closed: boolean;
  /** How broad it lies about its path, mm. */
  widthMm: number;
  /** A round fade: the second point lies on its rim. */
  round: boolean;
}

const thing = (key: string, path: readonly (readonly number[])[], more: Partial<Thing> = {}): Thing => ({
  key,
  path: path.map(([x, y]) => pointOf([x!, y!])),
  closed: false,
  widthMm: 0,
  round: false,
  ...more,
});

const NONE: readonly Thing[] = [];
const known = new WeakMap<object, readonly Thing[]>();

function once(key: object, make: () => readonly Thing[]): readonly Thing[] {
  const things = known.get(key) ?? make();
  known.set(key, things);
  return things;
}

/** The things of a set in a job. @param node id of the chosen node */
export function thingsOf(set: SurfaceSet, job: Job | null, node: string | null): readonly Thing[] {
  if (!job) return NONE;
  if (set === 'areas') {
    const area = areaAtHand(job, node);
    if (!area) return NONE;
    const { shapes, lines } = areaSettings(area);
    return once(area.settings, () => [
      ...shapes.map(({ id, pathMm }) => thing(id, pathMm, { closed: true })),
      ...lines.map(({ id, pathMm, withinMm }) => thing(id, pathMm, { widthMm: 2 * withinMm })),
    ]);
  }
  if (set === 'marks') {
    const marks = marksAtHand(job, node);
    if (!marks) return NONE;
    return once(marks.settings, () =>
      marksOf(marks).map(({ id, points, widthMm }) => thing(id, points, { widthMm })),
    );
  }
  if (set === 'nudge') return NONE;
  const fades = fadesOf(job);
  return once(fades, () =>
    Object.entries(fades).map(([region, { pathMm, shape }]) =>
      thing(region, pathMm, { round: shape === 'radial' }),
    ),
  );
}

/** The things of a set in the open document. */
export function thingsNow(set: SurfaceSet): readonly Thing[] {
  return thingsOf(set, jobStore.getState().job, viewStore.getState().node);
}

export function useThings(set: SurfaceSet): readonly Thing[] {
  const node = useView((state) => state.node);
  return useJobState(({ job }) => thingsOf(set, job, node));
}

/** How far a place lies from what a thing covers or is drawn along, mm. */
export function distanceToThing({ path, closed, widthMm, round }: Thing, mm: Point): number {
  if (round) {
    const [middle, rim] = [path[0]!, path.at(-1)!];
    const radius = Math.hypot(rim.x - middle.x, rim.y - middle.y);
    const away = Math.hypot(mm.x - middle.x, mm.y - middle.y);
    return Math.min(Math.abs(away - radius), distanceToSpan(mm, middle, rim));
  }
  let least = closed ? distanceToSpan(mm, path.at(-1)!, path[0]!) : Number.POSITIVE_INFINITY;
  for (let i = 0; i < path.length; i++)
    least = Math.min(least, distanceToSpan(mm, path[Math.max(0, i - 1)]!, path[i]!));
  return Math.max(0, least - widthMm / 2);
}

/** The thing nearest to a place; of equals the last made. Null when none is within reach. */
export function nearestThing(things: readonly Thing[], mm: Point, reachMm: number): Thing | null {
  let best: Thing | null = null;
  let least = reachMm;
  for (const each of things) {
    const distance = distanceToThing(each, mm);
    if (distance > least) continue;
    best = each;
    least = distance;
  }
  return best;
}
