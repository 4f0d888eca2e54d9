import type { Lab } from '../../graph/inks.ts';
import type { Recipe } from '../../graph/recipe.ts';
import { type DisplayColour, displayOf, type Gamut } from '../../ink/display.ts';
import { printModel } from '../../ink/model.ts';
import type { Print } from '../../nodes/print.ts';
import { recipeKey } from '../../store/recipe-list.ts';

export interface PrintColour extends DisplayColour {
  lab: Lab;
}

/** The colours of a print, each worked out when first asked for. */
export interface PrintColours {
  colourOf(recipe: Recipe): PrintColour;
  /** What to tell beside them. */
  notes: readonly string[];
}

/** Predicts colours. Takes some milliseconds. @throws RangeError when the print cannot be modelled */
export function coloursOf({ plates, input }: Print, gamut: Gamut): PrintColours {
  const model = printModel(input);
  const known = new Map<string, PrintColour>();
  const colourOf = (recipe: Recipe): PrintColour => {
    const key = recipeKey(recipe);
    const before = known.get(key);
    if (before) return before;
    const lab = model.labOf(plates.map((plate) => (recipe[plate] ?? 0) / 100));
    const colour = { lab, ...displayOf(lab, gamut) };
    known.set(key, colour);
    return colour;
  };
  return { colourOf, notes: model.notes.map(({ message }) => message) };
}
