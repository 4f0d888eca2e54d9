import type { GraphNode } from '../../graph/job.ts';
import type { Recipe } from '../../graph/recipe.ts';
import { printModel } from '../../ink/model.ts';
import type { PrintInput } from '../../ink/model-input.ts';
import { screenOf } from '../../ink/screen.ts';
import { inkSet, printingOf } from '../../nodes/ink-set.ts';
import { paperStock } from '../../nodes/paper-stock.ts';
import { recipeKey } from '../../store/recipe-list.ts';

/** What the colours of a job depend on. */
export interface Print {
  /** Ids of the plates, in print order; one for each ink of the input. */
  plates: readonly string[];
  input: PrintInput;
}

export interface PrintColour {
  lab: [number, number, number];
  hex: string;
  /** False when the screen cannot show it. */
  onScreen: boolean;
}

/** The colours of a print, each worked out when first asked for. */
export interface PrintColours {
  colourOf(recipe: Recipe): PrintColour;
  /** What to tell beside them. */
  notes: readonly string[];
}

/** The print that a job's first Ink set and Paper stock make; null when they make none. */
export function printOf(nodes: readonly GraphNode[]): Print | null {
  const settingsOf = (kind: string) => nodes.find((node) => node.kind === kind)?.settings;
  const set = inkSet.settings.safeParse(settingsOf(inkSet.kind));
  if (!set.success) return null;
  const { lab, surface } = paperStock.settings.parse(settingsOf(paperStock.kind) ?? {});
  const { inks, plates } = set.data;
  const known = plates.flatMap((plate) => {
    const ink = inks.find(({ id }) => id === plate.ink);
    return ink ? [{ ...plate, ink }] : [];
  });
  if (known.length === 0) return null;
  const input = {
    paper: { lab, surface },
    inks: known.map(({ ink }) => ink),
    passes: known.map(({ pass }) => pass),
    ...printingOf(set.data),
  };
  return { plates: known.map(({ id }) => id), input };
}

/** Predicts colours. Takes some milliseconds. @throws RangeError when the print cannot be modelled */
export function coloursOf({ plates, input }: Print): PrintColours {
  const model = printModel(input);
  const known = new Map<string, PrintColour>();
  const colourOf = (recipe: Recipe): PrintColour => {
    const key = recipeKey(recipe);
    const before = known.get(key);
    if (before) return before;
    const lab = model.labOf(plates.map((plate) => (recipe[plate] ?? 0) / 100));
    const colour = { lab, ...screenOf(lab) };
    known.set(key, colour);
    return colour;
  };
  return { colourOf, notes: model.notes.map(({ message }) => message) };
}
