import { BadInput } from '../../src/graph/complaint.ts';
import type { Lab } from '../../src/graph/inks.ts';
import { canonicalJson } from '../../src/graph/keys.ts';
import { printModel } from '../../src/ink/model.ts';
import type { PrintInput } from '../../src/ink/model-input.ts';
import { type FoundRecipe, recipeSearch, type SearchRules } from '../../src/ink/recipe-search.ts';

export interface FindRecipesArgs {
  print: PrintInput;
  rules: SearchRules;
  /** D50, absolute. */
  wanted: readonly Lab[];
  /** How many further recipes of each. */
  alternatives: number;
}

/** The last search, kept: preparing one takes longer than finding some recipes in it. */
let prepared: { key: string; search: ReturnType<typeof recipeSearch> } | null = null;

/** For each wanted colour its best recipe and as many others as asked for. @throws BadInput when print or rules cannot be */
export function findRecipes({ print, rules, wanted, alternatives }: FindRecipesArgs): FoundRecipe[][] {
  const key = canonicalJson({ print, rules });
  if (prepared?.key !== key) prepared = { key, search: searchOf(print, rules) };
  const { search } = prepared;
  return wanted.map((lab) => search(lab, alternatives));
}

function searchOf(print: PrintInput, rules: SearchRules): ReturnType<typeof recipeSearch> {
  try {
    return recipeSearch(printModel(print), rules);
  } catch (error) {
    throw error instanceof RangeError ? new BadInput(error.message) : error;
  }
}
