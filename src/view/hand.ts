import type { Recipe } from '../graph/recipe.ts';
import { recipeOf, withRecipe } from '../store/edits.ts';
import { edit, jobStore } from '../store/job-store.ts';
import { recipeKey } from '../store/recipe-list.ts';
import { resultsStore } from '../store/results-store.ts';
import { setView, viewStore } from '../store/view-store.ts';
import { type Point, toMm } from './camera.ts';
import { deskStore } from './desk-store.ts';
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
  return job ? regions.filter((id) => recipeKey(recipeOf(job, id)) !== key) : [];
}

/** Gives a region the recipe in hand, as one step. */
export function tint(region: string): void {
  const { inHand } = viewStore.getState();
  if (!inHand) {
    say(strings.said.handEmpty);
    return;
  }
  if (others([region], inHand).length === 0) {
    say(strings.said.already(words(inHand)));
    return;
  }
  edit(strings.step(1), (job) => withRecipe(job, [region], inHand));
  say(strings.said.tinted(1, words(inHand)));
}

/** Id of the region under a point of the desk. */
export function regionUnder(at: Point): string | null {
  const { regions } = resultsStore.getState();
  return regions ? (regionAt(regions, toMm(deskStore.getState().camera, at))?.id ?? null) : null;
}

/** A drag across regions: all that it crosses are tinted as one step. */
export interface Stroke {
  to(from: Point, to: Point): void;
  end(): void;
}

let strokes = 0;

/** Begins to tint whatever is crossed; null when there is nothing in hand to tint with. */
export function beginStroke(): Stroke | null {
  const { inHand } = viewStore.getState();
  if (!inHand) return null;
  const gesture = `tint ${++strokes}`;
  let count = 0;
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
    end() {
      if (count > 0) say(strings.said.tinted(count, words(inHand)));
    },
  };
}
