import type { Shortcut } from '../app/registry.ts';
import { jobStore } from '../store/job-store.ts';
import { recipesInUse } from '../store/recipe-list.ts';
import { takeInHand } from './hand.ts';
import { strings } from './strings.ts';

/** The number keys take the recipes of the colourway in hand, in the order of the list. */
export const recipeShortcuts: readonly Shortcut[] = Array.from({ length: 9 }, (_, place) => ({
  keys: String(place + 1),
  name: strings.chooseRecipe(place + 1),
  run: () => {
    const { job } = jobStore.getState();
    const recipe = job ? recipesInUse(job)[place] : undefined;
    if (recipe) takeInHand(recipe);
  },
}));
