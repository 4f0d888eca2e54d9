import type { Tool } from '../../app/registry.ts';
import { jobStore, undo } from '../../store/job-store.ts';
import { type Point, toMm } from '../camera.ts';
import { deskStore } from '../desk-store.ts';
import { reachMm, type Stroke } from '../hand.ts';
import { newDrag, surfaceStore } from './surface-store.ts';
import { chooseThing, moveEnd, moveThing, removeChosen } from './thing-edits.ts';
import { nearestThing, type SurfaceSet, type Thing, thingsNow } from './things.ts';

/** How far arrow keys move a chosen thing, mm. */
const STEP_MM = 0.1;
const FAR_MM = 1;

const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** The way of an arrow key and how far it goes, mm; null for other keys. */
export function arrowMove(key: string, far: boolean): Point | null {
  const way = ARROWS[key];
  const step = far ? FAR_MM : STEP_MM;
  return way ? { x: way.x * step, y: way.y * step } : null;
}

/** What Delete and the arrow keys do to the chosen thing. */
export function pressOnChosen(set: SurfaceSet, key: string, far: boolean): boolean {
  const { chosen } = surfaceStore.getState();
  if (chosen === null) return false;
  if (key === 'Delete' || key === 'Backspace') return removeChosen(set);
  const by = arrowMove(key, far);
  if (!by) return false;
  moveThing(set, chosen, by, `arrows ${set} ${chosen}`);
  return true;
}

const onSheet = (at: Point) => toMm(deskStore.getState().camera, at);

/** The end of a chosen fade that lies at a place. */
function endAt(set: SurfaceSet, mm: Point): { thing: Thing; end: 'first' | 'last' } | null {
  if (set !== 'fades') return null;
  const reach = reachMm();
  const near = ({ x, y }: Point) => Math.hypot(x - mm.x, y - mm.y) <= reach;
  const { chosen } = surfaceStore.getState();
  const ends = thingsNow(set).toSorted((a, b) => Number(b.key === chosen) - Number(a.key === chosen));
  for (const thing of ends) {
    if (near(thing.path.at(-1)!)) return { thing, end: 'last' };
    if (near(thing.path[0]!)) return { thing, end: 'first' };
  }
  return null;
}

/** Takes hold of the end of a fade; null when none is near. */
export function dragEnd(set: SurfaceSet, at: Point): Stroke | null {
  const held = endAt(set, onSheet(at));
  if (!held) return null;
  surfaceStore.setState({ chosen: held.thing.key });
  return dragging((to, gesture) => moveEnd(held.thing.key, held.end, onSheet(to), gesture));
}

function dragThing(set: SurfaceSet, at: Point): Stroke | null {
  const thing = nearestThing(thingsNow(set), onSheet(at), reachMm());
  if (!thing) return null;
  surfaceStore.setState({ chosen: thing.key });
  let last = onSheet(at);
  return dragging((to, gesture) => {
    const place = onSheet(to);
    moveThing(set, thing.key, { x: place.x - last.x, y: place.y - last.y }, gesture);
    last = place;
  });
}

/** A drag that edits as it goes, as one step; the step goes again when the drag is broken off. */
function dragging(to: (at: Point, gesture: string) => void): Stroke {
  const gesture = newDrag();
  return {
    to: (_, at) => to(at, gesture),
    end: () => {},
    drop: () => {
      if (jobStore.getState().past.at(-1)?.gesture === gesture) undo();
    },
  };
}

/** The tool that chooses, moves and takes out the things of a set. */
export function chooseToolOf(set: SurfaceSet, notes: Pick<Tool, 'title' | 'help'>): Tool {
  return {
    id: `choose-${set}`,
    ...notes,
    key: 'v',
    set,
    walks: 'regions',
    tap: ({ mm }) => chooseThing(set, nearestThing(thingsNow(set), mm, reachMm())?.key ?? null),
    stroke: (at) => dragEnd(set, at) ?? dragThing(set, at),
    press: (key, far) => pressOnChosen(set, key, far),
  };
}
