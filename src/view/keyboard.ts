import type { KeyboardEvent } from 'react';
import type { MappedRegion } from '../../workers/client.ts';
import { recipeOf } from '../store/edits.ts';
import { jobStore } from '../store/job-store.ts';
import { resultsStore } from '../store/results-store.ts';
import { setView, viewStore } from '../store/view-store.ts';
import { toMm } from './camera.ts';
import { deskStore, panBy, revealPlace } from './desk-store.ts';
import { pickUp, putDown } from './hand.ts';
import { type Direction, nearestRegion, nextRegion } from './next-region.ts';
import { platesOf, recipeText } from './plates-of.ts';
import { say } from './said-store.ts';
import { strings } from './strings.ts';
import { toolTaken } from './tools.ts';

const PAN_PX = 48;
const ARROWS: Record<string, { direction: Direction; x: number; y: number }> = {
  ArrowLeft: { direction: 'left', x: PAN_PX, y: 0 },
  ArrowRight: { direction: 'right', x: -PAN_PX, y: 0 },
  ArrowUp: { direction: 'up', x: 0, y: PAN_PX },
  ArrowDown: { direction: 'down', x: 0, y: -PAN_PX },
};

function standOn(region: MappedRegion): void {
  const [x, y] = region.anchorMm;
  deskStore.setState({ cursor: region.id, pointer: null });
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

/** What keys do while the print has the focus. */
export function pressKey(event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey) return;
  const arrow = ARROWS[event.key];
  const { cursor } = deskStore.getState();
  if (arrow) event.altKey ? step(arrow.direction) : panBy(arrow);
  else if (event.key === 'Enter' && cursor !== null) event.altKey ? pickUp(cursor) : toolTaken().tap(cursor);
  else if (event.key === 'Escape') putDown();
  else return;
  event.preventDefault();
}
