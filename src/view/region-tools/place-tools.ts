import type { Tool } from '../../app/registry.ts';
import type { Point } from '../camera.ts';
import { reachMm, type Spot } from '../hand.ts';
import { say } from '../said-store.ts';
import { makeEdit, placeMm, takeEditBack } from './make-edit.ts';
import { type Mark, nearestMark } from './marks.ts';
import { shownMarks } from './shown-marks.ts';
import { regionTexts as texts } from './strings.ts';

const noStroke = () => null;

const OPEN_WALL = 'open-wall';
const IGNORE_MARK = 'ignore-mark';

/** Whether a click with a tool changes what a mark stands for. */
export function actsOn(tool: string, mark: Mark): boolean {
  if (tool === OPEN_WALL) return mark.is === 'wall' || (mark.is === 'edit' && parts(mark.edit.does));
  return tool === IGNORE_MARK && mark.is === 'edit' && mark.edit.does === 'ignore-mark';
}

const parts = (does: string) => does === 'draw-wall' || does === 'cut' || does === 'open-wall';

function nearest(tool: string, mm: Point): Mark | null {
  return nearestMark(shownMarks(), mm, reachMm(), (mark) => actsOn(tool, mark));
}

function open({ mm }: Spot): void {
  const mark = nearest(OPEN_WALL, mm);
  if (!mark) say(texts.said.noWall);
  else if (mark.is === 'edit') takeEditBack(mark.edit.id);
  else if (mark.is === 'wall') toggle(mark);
}

function toggle({ wall, openedBy }: Extract<Mark, { is: 'wall' }>): void {
  if (openedBy !== null) takeEditBack(openedBy);
  else makeEdit({ does: 'open-wall', atMm: placeMm({ x: wall.placeMm[0], y: wall.placeMm[1] }) });
}

function ignore({ mm }: Spot): void {
  const mark = nearest(IGNORE_MARK, mm);
  if (mark?.is === 'edit') takeEditBack(mark.edit.id);
  else makeEdit({ does: 'ignore-mark', atMm: placeMm(mm) });
}

/** Takes walls down, and stands them again. */
export const openWall: Tool = {
  id: OPEN_WALL,
  ...texts.tools.openWall,
  key: 'o',
  set: 'regions',
  walks: 'marks',
  tap: open,
  stroke: noStroke,
};

/** Lets regions run through marks. */
export const ignoreMark: Tool = {
  id: IGNORE_MARK,
  ...texts.tools.ignoreMark,
  key: 'i',
  set: 'regions',
  walks: 'marks',
  tap: ignore,
  stroke: noStroke,
};
