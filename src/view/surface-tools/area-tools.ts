import type { Tool } from '../../app/registry.ts';
import type { Job } from '../../graph/job.ts';
import { areaAtHand, areaSettings, withLineNear, withRegions, withShape } from '../../store/areas.ts';
import { edit, jobStore } from '../../store/job-store.ts';
import { resultsStore } from '../../store/results-store.ts';
import { setView, viewStore } from '../../store/view-store.ts';
import { type Point, toMm } from '../camera.ts';
import { deskStore } from '../desk-store.ts';
import { reachMm, type Spot, type Stroke, spotAt } from '../hand.ts';
import { regionsAlong } from '../pick.ts';
import { placeMm } from '../region-tools/make-edit.ts';
import { simplify } from '../region-tools/simplify.ts';
import {
  dropUnfinished,
  finishUnfinished,
  keepUnfinished,
  type Unfinished,
  unfinishedOf,
} from '../region-tools/unfinished-store.ts';
import { say } from '../said-store.ts';
import { pressOnChosen } from './choose-thing.ts';
import { surfaceTexts as texts } from './strings.ts';
import { newDrag, surfaceStore } from './surface-store.ts';

const { areas } = texts;
/** How far a drawn outline may be straightened, px on screen. */
const STRAIGHTENED_PX = 1;
/** Two clicks as near as this are one place, px. */
const SAME_PLACE_PX = 10;
/** A shape is at least so large either way, mm. */
const LEAST_MM = 0.1;

/** Changes the area at hand as one step; says so where there is none. @returns whether it was changed */
function change(
  name: string,
  edited: (job: Job, area: string) => Job,
  gesture: string | null = null,
): boolean {
  const { job } = jobStore.getState();
  const area = job && areaAtHand(job, viewStore.getState().node);
  if (!area) {
    say(areas.first);
    return false;
  }
  edit(name, (before) => edited(before, area.id), gesture);
  return true;
}

const onSheet = (at: Point) => toMm(deskStore.getState().camera, at);
const tolerance = () => STRAIGHTENED_PX / deskStore.getState().camera.pxPerMm;

function tooSmall(points: readonly Point[]): boolean {
  const span = (values: number[]) => Math.max(...values) - Math.min(...values);
  return (
    points.length < 3 || Math.min(span(points.map(({ x }) => x)), span(points.map(({ y }) => y))) < LEAST_MM
  );
}

function makeShape(by: 'lasso' | 'polygon' | 'rectangle', points: readonly Point[]): void {
  if (tooSmall(points)) say(texts.tooSmall);
  else if (change(areas.steps[by], (job, id) => withShape(job, id, points.map(placeMm))))
    say(areas.said.shape);
}

function makeLine(points: readonly Point[]): void {
  const { nearMm } = surfaceStore.getState();
  const path = simplify(points, tolerance()).map(placeMm);
  if (change(areas.steps.line, (job, id) => withLineNear(job, id, path, nearMm))) say(areas.said.line);
}

/** A drag whose places are made into something when it ends. */
function drawn(begun: Unfinished, at: Point): Stroke {
  const { tool } = begun;
  keepUnfinished({ ...begun, points: [onSheet(at)] });
  return {
    to: (_, to) => {
      const points = unfinishedOf(tool)?.points;
      if (points) keepUnfinished({ ...begun, points: [...points, onSheet(to)] });
    },
    end: finishUnfinished,
    drop: dropUnfinished,
  };
}

/** Puts a corner to a path that is given corner by corner; the last again, or the first, ends it. */
function corner(begun: Unfinished, mm: Point): void {
  const points = unfinishedOf(begun.tool)?.points ?? [];
  const same = (other: Point | undefined) =>
    other !== undefined && Math.hypot(other.x - mm.x, other.y - mm.y) <= reachMm(SAME_PLACE_PX);
  const closes = begun.outline === 'ring' && points.length >= (begun.least ?? 2) && same(points[0]);
  if (closes || same(points.at(-1))) finishUnfinished();
  else keepUnfinished({ ...begun, points: [...points, mm] });
}

const takesArea: NonNullable<Tool['taken']> = () => {
  const { job } = jobStore.getState();
  const area = job && areaAtHand(job, viewStore.getState().node);
  if (area) setView({ node: area.id });
};

const shared = {
  set: 'areas',
  walks: 'regions',
  press: (key: string, far: boolean) => pressOnChosen('areas', key, far),
  taken: takesArea,
} as const;

const LASSO: Unfinished = {
  tool: 'area-lasso',
  points: [],
  finish: (points) => makeShape('lasso', simplify(points, tolerance())),
  outline: 'ring',
  least: 3,
};

const POLYGON: Unfinished = {
  tool: 'area-polygon',
  points: [],
  finish: (points) => makeShape('polygon', points),
  outline: 'ring',
  least: 3,
};

const NEAR: Unfinished = { tool: 'area-line', points: [], finish: makeLine, least: 1 };

const lasso: Tool = {
  id: LASSO.tool,
  ...texts.tools.lasso,
  key: 'l',
  ...shared,
  tap: ({ mm }) => corner(LASSO, mm),
  stroke: (at) => drawn(LASSO, at),
};

const polygon: Tool = {
  id: POLYGON.tool,
  ...texts.tools.polygon,
  key: 'g',
  ...shared,
  tap: ({ mm }) => corner(POLYGON, mm),
  stroke: () => null,
};

const RECTANGLE = 'area-rectangle';

function rectangleOf(a: Point, b: Point): Point[] {
  return [a, { x: b.x, y: a.y }, b, { x: a.x, y: b.y }];
}

function beginRectangle(mm: Point): void {
  keepUnfinished({ tool: RECTANGLE, points: [mm], finish: null, outline: 'rectangle' });
}

function endRectangle(mm: Point): void {
  const first = unfinishedOf(RECTANGLE)?.points[0];
  dropUnfinished();
  if (first) makeShape('rectangle', rectangleOf(first, mm));
}

const rectangle: Tool = {
  id: RECTANGLE,
  ...texts.tools.rectangle,
  key: 'r',
  ...shared,
  tap: ({ mm }) => (unfinishedOf(RECTANGLE) ? endRectangle(mm) : beginRectangle(mm)),
  stroke: (at) => {
    let last = at;
    beginRectangle(onSheet(at));
    return {
      to: (_, to) => {
        last = to;
      },
      end: () => endRectangle(onSheet(last)),
      drop: dropUnfinished,
    };
  },
};

function takeRegions(regions: readonly string[], takes: boolean, gesture: string | null = null): void {
  const name = areas.steps.regions(regions.length, takes);
  if (!change(name, (job, id) => withRegions(job, id, regions, takes), gesture)) return;
  say(areas.said.regions(regionsIn().size));
}

function regionsIn(): ReadonlySet<string> {
  const { job } = jobStore.getState();
  const area = job && areaAtHand(job, viewStore.getState().node);
  return new Set(area ? areaSettings(area).regions : []);
}

const wholeRegions: Tool = {
  id: 'area-regions',
  ...texts.tools.regions,
  key: 'a',
  ...shared,
  tap: ({ region }: Spot) => {
    if (region !== null) takeRegions([region], !regionsIn().has(region));
  },
  stroke: (at) => {
    const first = spotAt(at).region;
    const takes = first === null || !regionsIn().has(first);
    const gesture = newDrag();
    const met = new Set<string>();
    return {
      to: (from, to) => {
        const { regions } = resultsStore.getState();
        if (!regions) return;
        const before = met.size;
        for (const id of regionsAlong(regions, onSheet(from), onSheet(to))) met.add(id);
        if (met.size > before) takeRegions([...met], takes, gesture);
      },
      end: () => {},
      drop: () => {},
    };
  },
};

const lineNear: Tool = {
  id: NEAR.tool,
  ...texts.tools.lineNear,
  key: 'q',
  ...shared,
  tap: ({ mm }) => corner(NEAR, mm),
  stroke: (at) => drawn(NEAR, at),
};

/** The tools that make the shapes of an area. */
export const areaTools: readonly [Tool, ...Tool[]] = [lasso, polygon, rectangle, wholeRegions, lineNear];
