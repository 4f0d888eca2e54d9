import type { KeyboardEvent } from 'react';
import type { MappedRegion } from '../../workers/client.ts';
import { recipeOf } from '../store/edits.ts';
import { jobStore } from '../store/job-store.ts';
import { resultsStore } from '../store/results-store.ts';
import { setView, viewStore } from '../store/view-store.ts';
import { toMm } from './camera.ts';
import { keyboardSpot, moveCrosshair, stepMark } from './crosshair.ts';
import { deskStore, panBy, revealPlace } from './desk-store.ts';
import { pickUp, putDown } from './hand.ts';
import { type Direction, nearestRegion, nextRegion } from './next-region.ts';
import { platesOf, recipeText } from './plates-of.ts';
import { choose, chooseAllBeside, chooseTool } from './region-tools/choose-tool.ts';
import { regionTexts } from './region-tools/strings.ts';
import { dropUnfinished, takeBackPoint } from './region-tools/unfinished-store.ts';
import { say } from './said-store.ts';
import { strings } from './strings.ts';
import { surfaceStore } from './surface-tools/surface-store.ts';
import { takeUsualTool, toolTaken } from './tools.ts';

const PAN_PX = 48;
const ARROWS: Record<string, { direction: Direction; x: number; y: number }> = {
  ArrowLeft: { direction: 'left', x: PAN_PX, y: 0 },
  ArrowRight: { direction: 'right', x: -PAN_PX, y: 0 },
  ArrowUp: { direction: 'up', x: 0, y: PAN_PX },
  ArrowDown: { direction: 'down', x: 0, y: -PAN_PX },
};

function standOn(region: MappedRegion): void {
  const [x, y] = region.anchorMm;
  deskStore.setState({ cursor: region.id, crosshair: null, pointer: null, mark: null });
  setView({ hovered: region.id });
  revealPlace({ x, y });
  const { job } = jobStore.getState();
  if (job) say(strings.region(recipeText(recipeOf(job, region.id), platesOf(job)), region.areaMm2));
}

/** To the next region that way; from nowhere, to the one nearest to the middle of the view. */
function step(direction: Direction): void {
  const { regions } = resultsStore.getState();
  const { camera, desk, cursor } = deskStore.getState();
  if (!regions) return;
  const standing = cursor ?? viewStore.getState().hovered;
  const from = regions.regions.find(({ id }) => id === standing);
  const middle = toMm(camera, { x: desk.width / 2, y: desk.height / 2 });
  const to = from ? nextRegion(regions.regions, from, direction) : nearestRegion(regions.regions, middle);
  if (to) standOn(to);
  else say(strings.said.noneThatWay);
}

/** What an arrow key does: with Alt it goes to the next thing the tool acts on; alone it moves crosshair or print. */
function pressArrow(key: string, alt: boolean, shift: boolean): void {
  const { direction, x, y } = ARROWS[key]!;
  const tool = toolTaken();
  if (alt) tool.walks === 'marks' ? stepMark(direction) : step(direction);
  else if (tool.set !== 'usual') moveCrosshair({ x: -x / PAN_PX, y: -y / PAN_PX }, shift);
  else panBy({ x, y });
}

function pressEnter(alt: boolean): void {
  const spot = keyboardSpot();
  if (!spot) return;
  const tool = toolTaken();
  if (alt && spot.region !== null) pickUp(spot.region);
  else if (tool.enter) tool.enter(spot);
  else tool.tap(spot);
}

/** Lets go of the least there is: an unfinished path, what is chosen, the tool, the recipe in hand. */
function pressEscape(): void {
  if (dropUnfinished()) say(regionTexts.said.dropped);
  else if (surfaceStore.getState().chosen !== null) surfaceStore.setState({ chosen: null });
  else if (viewStore.getState().chosen.length > 0) choose([]);
  else if (toolTaken().set !== 'usual') takeUsualTool();
  else putDown();
}

/** @returns whether the key meant something */
function pressed({ key, altKey, shiftKey }: KeyboardEvent): boolean {
  if (key === 'Backspace' && takeBackPoint()) return true;
  if (!altKey && toolTaken().press?.(key, shiftKey)) return true;
  if (key in ARROWS) pressArrow(key, altKey, shiftKey);
  else if (key === 'Enter') pressEnter(altKey);
  else if (key === 'Escape') pressEscape();
  else return false;
  return true;
}

/** With Control or Command, A chooses all that lie beside the chosen region. */
function pressedWithControl({ key }: KeyboardEvent): boolean {
  if (key.toLowerCase() !== 'a' || toolTaken().id !== chooseTool.id) return false;
  chooseAllBeside();
  return true;
}

/** What keys do while the print has the focus. */
export function pressKey(event: KeyboardEvent): void {
  const withControl = event.ctrlKey || event.metaKey;
  if (withControl ? pressedWithControl(event) : pressed(event)) event.preventDefault();
}
