import type { Recipe } from '../graph/recipe.ts';
import { hasFade, recipeOf, withRecipe } from '../store/edits.ts';
import { edit, jobStore } from '../store/job-store.ts';
import { recipeKey } from '../store/recipe-list.ts';
import { resultsStore } from '../store/results-store.ts';
import { setView, viewStore } from '../store/view-store.ts';
import { type Point, toMm } from './camera.ts';
import { deskStore } from './desk-store.ts';
import type { HandPoint } from './gesture.ts';
import { regionAt, regionsAlong } from './pick.ts';
import { platesOf, recipeText } from './plates-of.ts';
import { say } from './said-store.ts';
import { strings } from './strings.ts';

function words(recipe: Recipe): string {
  const { job } = jobStore.getState();
  return job ? recipeText(recipe, platesOf(job)) : '';
}

/** Takes a recipe in hand, for regions to be tinted with. */
export function takeInHand(recipe: Recipe): void {
  setView({ inHand: recipe });
  say(strings.said.pickedUp(words(recipe)));
}

export function putDown(): void {
  if (!viewStore.getState().inHand) return;
  setView({ inHand: null });
  say(strings.said.putDown);
}

/** Takes the recipe of a region in hand. */
export function pickUp(region: string): void {
  const { job } = jobStore.getState();
  if (job) takeInHand(recipeOf(job, region));
}

/** Those of some regions that do not print a recipe yet. */
function others(regions: readonly string[], recipe: Recipe): string[] {
  const { job } = jobStore.getState();
  const key = recipeKey(recipe);
  return job ? regions.filter((id) => hasFade(job, id) || recipeKey(recipeOf(job, id)) !== key) : [];
}

/** Gives regions the recipe in hand, as one step. */
export function tint(...regions: readonly string[]): void {
  const { inHand } = viewStore.getState();
  if (!inHand) {
    say(strings.said.handEmpty);
    return;
  }
  const changed = others(regions, inHand);
  if (changed.length === 0) {
    say(strings.said.already(words(inHand)));
    return;
  }
  edit(strings.step(changed.length), (job) => withRecipe(job, changed, inHand));
  say(strings.said.tinted(changed.length, words(inHand)));
}

/** A place of the print that a hand touches. */
export interface Spot {
  mm: Point;
  /** Id of the region there. */
  region: string | null;
}

/** A place of the sheet, mm, with its region. */
export function spotOn(mm: Point): Spot {
  const { regions } = resultsStore.getState();
  return { mm, region: regions ? (regionAt(regions, mm)?.id ?? null) : null };
}

/** The place under a point of the desk. */
export function spotAt(at: Point): Spot {
  return spotOn(toMm(deskStore.getState().camera, at));
}

/** Half a touch target: so near to something small a hand takes it, px. */
const REACH_PX = 22;

/** How far a hand reaches on the sheet as it lies, mm. */
export function reachMm(px = REACH_PX): number {
  return px / deskStore.getState().camera.pxPerMm;
}

/** A drag over the print. */
export interface Stroke {
  to(from: HandPoint, to: HandPoint): void;
  end(): void;
  /** A second finger came, or the system took the pointer away. */
  drop(): void;
}

let strokes = 0;

/** Begins to tint whatever is crossed, all of it as one step; null when there is nothing in hand to tint with. */
export function beginStroke(): Stroke | null {
  const { inHand } = viewStore.getState();
  if (!inHand) return null;
  const gesture = `tint ${++strokes}`;
  let count = 0;
  const end = () => {
    if (count > 0) say(strings.said.tinted(count, words(inHand)));
  };
  return {
    to(from, to) {
      const { regions } = resultsStore.getState();
      const { camera } = deskStore.getState();
      if (!regions) return;
      const crossed = others(regionsAlong(regions, toMm(camera, from), toMm(camera, to)), inHand);
      if (crossed.length === 0) return;
      count += crossed.length;
      edit(strings.step(count), (job) => withRecipe(job, crossed, inHand), gesture);
    },
    end,
    drop: end,
  };
}
