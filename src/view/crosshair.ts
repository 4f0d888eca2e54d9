import { resultsStore } from '../store/results-store.ts';
import { setView, viewStore } from '../store/view-store.ts';
import { type Point, toMm } from './camera.ts';
import { deskStore, revealPlace } from './desk-store.ts';
import { type Spot, spotOn } from './hand.ts';
import { type Direction, nearestTo, nextThatWay } from './next-region.ts';
import { markText } from './region-tools/mark-text.ts';
import { markAt } from './region-tools/mark-under.ts';
import type { Mark } from './region-tools/marks.ts';
import { actsOn } from './region-tools/place-tools.ts';
import { shownMarks } from './region-tools/shown-marks.ts';
import { regionTexts } from './region-tools/strings.ts';
import { say } from './said-store.ts';

/** How far an arrow key moves the crosshair, px on screen; with Shift for exact work. */
const STEP_PX = 12;
const FINE_STEP_PX = 1;

/** Where the keyboard stands, or would begin: under the pointer, or in the middle of the view. */
function standing(): Point {
  const { pointer, camera, desk } = deskStore.getState();
  return keyboardSpot()?.mm ?? toMm(camera, pointer ?? { x: desk.width / 2, y: desk.height / 2 });
}

/** Puts the crosshair to a place of the sheet and says what is there. */
export function standAt(mm: Point): void {
  const mark = markAt(mm);
  deskStore.setState({ crosshair: mm, cursor: null, pointer: null, mark });
  setView({ hovered: spotOn(mm).region });
  revealPlace(mm);
  const found = mark === null ? undefined : shownMarks().find(({ key }) => key === mark);
  say(found ? markText(found, viewStore.getState().tool) : regionTexts.at(mm));
}

/** Moves the crosshair, kept on the sheet. */
export function moveCrosshair(way: Point, fine: boolean): void {
  const { camera, sheet } = deskStore.getState();
  if (!sheet) return;
  const step = (fine ? FINE_STEP_PX : STEP_PX) / camera.pxPerMm;
  const { x, y } = standing();
  const within = (at: number, most: number) => Math.min(most, Math.max(0, at));
  standAt({ x: within(x + way.x * step, sheet.width), y: within(y + way.y * step, sheet.height) });
}

/** Has the crosshair on the next mark that way that the tool acts on; from nowhere, on the nearest. */
export function stepMark(direction: Direction): void {
  const { tool } = viewStore.getState();
  const marks = shownMarks().filter((mark) => actsOn(tool, mark));
  const placeOf = (mark: Mark): readonly [number, number] => {
    if (mark.is === 'wall') return mark.wall.placeMm;
    const { x, y } = mark.path[0]!;
    return [x, y];
  };
  const from = standing();
  const { crosshair } = deskStore.getState();
  const next = crosshair ? nextThatWay(marks, placeOf, from, direction) : nearestTo(marks, placeOf, from);
  if (!next) {
    say(regionTexts.said.noneThatWay);
    return;
  }
  const [x, y] = placeOf(next);
  standAt({ x, y });
}

/** The place that Enter acts on; null while the keyboard stands nowhere. */
export function keyboardSpot(): Spot | null {
  const { crosshair, cursor } = deskStore.getState();
  if (crosshair) return spotOn(crosshair);
  const region = resultsStore.getState().regions?.regions.find(({ id }) => id === cursor);
  return region ? { mm: { x: region.anchorMm[0], y: region.anchorMm[1] }, region: region.id } : null;
}
