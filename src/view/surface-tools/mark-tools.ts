import type { Tool } from '../../app/registry.ts';
import type { GraphNode } from '../../graph/job.ts';
import { withNode } from '../../store/edits.ts';
import { marksAtHand, marksOf, withHandMarks, withMark, withMarks } from '../../store/hand-marks.ts';
import { edit, jobStore } from '../../store/job-store.ts';
import { setView, viewStore } from '../../store/view-store.ts';
import { type Point, toMm } from '../camera.ts';
import { deskStore } from '../desk-store.ts';
import type { HandPoint } from '../gesture.ts';
import { reachMm, type Stroke } from '../hand.ts';
import { pressOf } from '../held-as.ts';
import { finishUnfinished, keepUnfinished, unfinishedOf } from '../region-tools/unfinished-store.ts';
import { say } from '../said-store.ts';
import { pressOnChosen } from './choose-thing.ts';
import { surfaceTexts } from './strings.ts';
import { strokePoints } from './stroke-points.ts';
import { type DraftPoint, newDrag, surfaceStore } from './surface-store.ts';
import { nearestThing, thingsNow } from './things.ts';

const { marks: texts, tools } = surfaceTexts;

/** How far the drawn stroke may lie from the hand's way: so many px on screen, and never more mm. */
const LOOSE_PX = 0.5;
const LOOSE_MM = 0.05;
/** As many as the document takes. */
const MOST_MARKS = 20_000;
/** Two key presses as near as this are one place, px. */
const SAME_PLACE_PX = 10;
/** A place given by keyboard presses half. */
const HALF = 0.5;

/** The Hand marks to draw on: put in where they belong if there are none, used again if they were bypassed. */
function marksReady(): GraphNode | null {
  const { job } = jobStore.getState();
  if (!job) return null;
  const there = marksAtHand(job, viewStore.getState().node);
  if (there?.bypassed) {
    edit(texts.useAgain, (before) => withNode(before, there.id, (node) => ({ ...node, bypassed: false })));
    say(texts.bypassed);
  }
  if (there) return there;
  const put = withHandMarks(job.graph);
  if (!put) {
    say(texts.noPlates);
    return null;
  }
  const place = put.before !== null ? texts.before(put.before) : texts.after(put.after!);
  edit(texts.putIn(place), (before) => ({ ...before, graph: put.graph }));
  setView({ node: put.node });
  return put.graph.nodes.find(({ id }) => id === put.node)!;
}

function makeMark(draft: readonly DraftPoint[]): void {
  const node = marksReady();
  if (!node) return;
  const count = marksOf(node).length;
  if (count >= MOST_MARKS) {
    say(texts.full);
    return;
  }
  const { brush } = surfaceStore.getState();
  const loose = Math.min(LOOSE_MM, LOOSE_PX / deskStore.getState().camera.pxPerMm);
  const points = strokePoints(draft, brush.widthMm, loose);
  edit(texts.steps.draw, (job) => withMark(job, node.id, { ...brush, points }));
  say(texts.said.drawn(count + 1));
}

function draftAt(at: HandPoint): DraftPoint {
  const { x, y } = toMm(deskStore.getState().camera, at);
  return [x, y, pressOf(at)];
}

function drawing(at: HandPoint): Stroke {
  surfaceStore.setState({ draft: [draftAt(at)], chosen: null });
  return {
    to: (_, to) => surfaceStore.setState(({ draft }) => ({ draft: [...draft, draftAt(to)] })),
    end: () => {
      const { draft } = surfaceStore.getState();
      surfaceStore.setState({ draft: [] });
      makeMark(draft);
    },
    drop: () => surfaceStore.setState({ draft: [] }),
  };
}

const DRAW = 'mark-draw';

/** Goes on with a stroke place by place, as the keyboard does; the same place again ends it. */
function placeByKeys({ x, y }: Point): void {
  const points = unfinishedOf(DRAW)?.points ?? [];
  const last = points.at(-1);
  if (last && Math.hypot(last.x - x, last.y - y) <= reachMm(SAME_PLACE_PX)) {
    finishUnfinished();
    return;
  }
  keepUnfinished({
    tool: DRAW,
    points: [...points, { x, y }],
    finish: (path) => makeMark(path.map((place) => [place.x, place.y, HALF])),
    least: 1,
  });
}

const takesMarks: NonNullable<Tool['taken']> = () => {
  const { job } = jobStore.getState();
  const node = job && marksAtHand(job, viewStore.getState().node);
  if (node) setView({ node: node.id });
};

const shared = {
  set: 'marks',
  walks: 'regions',
  press: (key: string, far: boolean) => pressOnChosen('marks', key, far),
  taken: takesMarks,
} as const;

const draw: Tool = {
  id: DRAW,
  ...tools.draw,
  key: 'b',
  ...shared,
  tap: ({ mm }) => makeMark([[mm.x, mm.y, HALF]]),
  stroke: drawing,
  enter: ({ mm }) => placeByKeys(mm),
};

/** Takes out the strokes near a place; those of one drag as one step. @returns how many */
function eraseNear(mm: Point, gesture: string, before: number): number {
  const found = nearestThing(thingsNow('marks'), mm, reachMm() / 2);
  const { job } = jobStore.getState();
  const node = job && marksAtHand(job, viewStore.getState().node);
  if (!found || !node) return 0;
  edit(
    texts.steps.erase(before + 1),
    (now) => withMarks(now, node.id, (marks) => marks.filter(({ id }) => id !== found.key)),
    gesture,
  );
  return 1 + eraseNear(mm, gesture, before + 1);
}

function erasing(at: HandPoint): Stroke {
  const gesture = newDrag();
  const onSheet = (point: Point) => toMm(deskStore.getState().camera, point);
  let count = eraseNear(onSheet(at), gesture, 0);
  const end = () => say(count > 0 ? texts.said.erased(count) : texts.said.nothing);
  return {
    to: (from, to) => {
      const [a, b] = [onSheet(from), onSheet(to)];
      const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / reachMm() / 0.5));
      for (let i = 1; i <= steps; i++) {
        const share = i / steps;
        const mm = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
        count += eraseNear(mm, gesture, count);
      }
    },
    end,
    drop: end,
  };
}

const erase: Tool = {
  id: 'mark-erase',
  ...tools.erase,
  key: 'e',
  ...shared,
  tap: ({ mm }) => {
    const count = eraseNear(mm, newDrag(), 0);
    say(count > 0 ? texts.said.erased(count) : texts.said.nothing);
  },
  stroke: erasing,
};

/** The tools that draw strokes and take them out. */
export const markTools: readonly [Tool, ...Tool[]] = [draw, erase];
