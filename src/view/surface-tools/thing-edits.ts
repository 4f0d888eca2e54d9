import type { Job } from '../../graph/job.ts';
import type { Fade } from '../../graph/recipe.ts';
import { areaAtHand, withoutShape, withShapeMoved } from '../../store/areas.ts';
import { withoutFades } from '../../store/edits.ts';
import { withFadeChanged } from '../../store/fades.ts';
import { marksAtHand, movedMark, withMarks } from '../../store/hand-marks.ts';
import { edit } from '../../store/job-store.ts';
import { viewStore } from '../../store/view-store.ts';
import type { Point } from '../camera.ts';
import { placeMm } from '../region-tools/make-edit.ts';
import { say } from '../said-store.ts';
import { surfaceTexts as texts } from './strings.ts';
import { surfaceStore } from './surface-store.ts';
import type { SurfaceSet } from './things.ts';

/** The job without a thing. */
function without(job: Job, set: SurfaceSet, key: string): Job {
  const { node } = viewStore.getState();
  if (set === 'fades') return withoutFades(job, [key]);
  if (set === 'areas') {
    const area = areaAtHand(job, node);
    return area ? withoutShape(job, area.id, key) : job;
  }
  const marks = marksAtHand(job, node);
  return marks ? withMarks(job, marks.id, (all) => all.filter(({ id }) => id !== key)) : job;
}

/** The job with a thing moved, mm to the right and down. */
function moved(job: Job, set: SurfaceSet, key: string, { x, y }: Point): Job {
  const { node } = viewStore.getState();
  if (set === 'fades')
    return withFadeChanged(job, key, (fade) => ({
      ...fade,
      pathMm: fade.pathMm.map(([px, py]) => placeMm({ x: px + x, y: py + y })),
    }));
  if (set === 'areas') {
    const area = areaAtHand(job, node);
    return area ? withShapeMoved(job, area.id, key, [x, y]) : job;
  }
  const marks = marksAtHand(job, node);
  if (!marks) return job;
  return withMarks(job, marks.id, (all) =>
    all.map((mark) => (mark.id === key ? movedMark(mark, [x, y]) : mark)),
  );
}

/** Chooses a thing, or lets the chosen one go. */
export function chooseThing(set: SurfaceSet, key: string | null): void {
  surfaceStore.setState({ chosen: key });
  say(key === null ? texts.nothingNear : texts.chosen(texts.things[set]));
}

/** Takes the chosen thing out, as one step. @returns whether there was one */
export function removeChosen(set: SurfaceSet): boolean {
  const { chosen } = surfaceStore.getState();
  if (chosen === null) return false;
  edit(texts.removeStep[set], (job) => without(job, set, chosen));
  surfaceStore.setState({ chosen: null });
  say(texts.gone[set]);
  return true;
}

/** Moves a thing; moves of one gesture are one step. */
export function moveThing(set: SurfaceSet, key: string, by: Point, gesture: string): void {
  edit(texts.moveStep[set], (job) => moved(job, set, key, by), gesture);
}

/** Moves one end of a fade to a place. */
export function moveEnd(region: string, end: 'first' | 'last', to: Point, gesture: string): void {
  const place = placeMm(to);
  const reshaped = ({ pathMm }: Fade) =>
    end === 'first' ? [place, ...pathMm.slice(1)] : [...pathMm.slice(0, -1), place];
  edit(
    texts.moveStep.fades,
    (job) => withFadeChanged(job, region, (fade) => ({ ...fade, pathMm: reshaped(fade) })),
    gesture,
  );
}
