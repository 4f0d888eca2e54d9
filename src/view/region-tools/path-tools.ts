import type { Tool } from '../../app/registry.ts';
import { type Point, toMm } from '../camera.ts';
import { deskStore } from '../desk-store.ts';
import { reachMm, type Stroke } from '../hand.ts';
import { say } from '../said-store.ts';
import { makeEdit, placeMm } from './make-edit.ts';
import { simplify } from './simplify.ts';
import { regionTexts as texts } from './strings.ts';
import { dropUnfinished, finishUnfinished, keepUnfinished, unfinishedOf } from './unfinished-store.ts';

/** How far a drawn path may be straightened, px on screen. */
const STRAIGHTENED_PX = 1;
/** Two clicks as near as this are one place, px. */
const SAME_PLACE_PX = 10;

type PathEdit = 'draw-wall' | 'cut';

function make(does: PathEdit, points: readonly Point[]): void {
  const { pxPerMm } = deskStore.getState().camera;
  const pathMm = simplify(points, STRAIGHTENED_PX / pxPerMm).map(placeMm);
  if (pathMm.length < 2) say(texts.said.onePoint);
  else makeEdit({ does, pathMm });
}

/** A tool that follows a path: dragged, or corner by corner until the last is given twice. */
function pathTool(does: PathEdit, key: string, notes: Pick<Tool, 'title' | 'help'>): Tool {
  const finish = (points: readonly Point[]) => make(does, points);

  const tap = (mm: Point) => {
    const points = unfinishedOf(does)?.points ?? [];
    const last = points.at(-1);
    if (last && Math.hypot(last.x - mm.x, last.y - mm.y) <= reachMm(SAME_PLACE_PX)) {
      finishUnfinished();
      return;
    }
    keepUnfinished({ tool: does, points: [...points, mm], finish });
    say(texts.said.points(points.length + 1));
  };

  const stroke = (at: Point): Stroke => {
    keepUnfinished({ tool: does, points: [toMm(deskStore.getState().camera, at)], finish });
    return {
      to: (_, to) => {
        const points = unfinishedOf(does)?.points;
        const mm = toMm(deskStore.getState().camera, to);
        if (points) keepUnfinished({ tool: does, points: [...points, mm], finish });
      },
      end: finishUnfinished,
      drop: dropUnfinished,
    };
  };

  return { id: does, ...notes, key, set: 'regions', walks: 'regions', tap: ({ mm }) => tap(mm), stroke };
}

/** Stands walls where regions should part. */
export const drawWall = pathTool('draw-wall', 'w', texts.tools.drawWall);

/** Parts regions. */
export const cut = pathTool('cut', 'x', texts.tools.cut);
