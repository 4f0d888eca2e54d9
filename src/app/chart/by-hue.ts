import type { Lab } from '../../graph/inks.ts';
import type { Recipe } from '../../graph/recipe.ts';
import { recipeKey } from '../../store/recipe-list.ts';

/** Families of hue in the order of the colour circle, each up to its angle in degrees (CIE Lab). */
const FAMILIES = [
  { name: 'pinks', upTo: 15 },
  { name: 'reds', upTo: 45 },
  { name: 'oranges', upTo: 75 },
  { name: 'yellows', upTo: 110 },
  { name: 'greens', upTo: 165 },
  { name: 'seaGreens', upTo: 215 },
  { name: 'blues', upTo: 285 },
  { name: 'violets', upTo: 325 },
  { name: 'pinks', upTo: 360 },
] as const;
/** Below this chroma a colour counts as a grey. */
const GREY = 8;

export type Family = (typeof FAMILIES)[number]['name'] | 'greys';

export interface HueGroup {
  family: Family;
  /** From light to dark. */
  recipes: readonly Recipe[];
}

/** The family a colour belongs to. */
export function familyOf([, a, b]: Readonly<Lab>): Family {
  if (Math.hypot(a, b) < GREY) return 'greys';
  const angle = (Math.atan2(b, a) * 180) / Math.PI;
  const turned = angle < 0 ? angle + 360 : angle;
  return FAMILIES.find(({ upTo }) => turned <= upTo)!.name;
}

/** Recipes by the hue of what they print, without doubles; families that hold none are left out. */
export function byHue(recipes: readonly Recipe[], labOf: (recipe: Recipe) => Lab): HueGroup[] {
  const distinct = [...new Map(recipes.map((recipe) => [recipeKey(recipe), recipe])).values()];
  const coloured = distinct
    .map((recipe) => ({ recipe, lab: labOf(recipe) }))
    .sort((one, other) => other.lab[0] - one.lab[0]);
  const names = [...new Set(FAMILIES.map(({ name }) => name)), 'greys' as const];
  return names
    .map((family) => ({
      family,
      recipes: coloured.filter(({ lab }) => familyOf(lab) === family).map(({ recipe }) => recipe),
    }))
    .filter((group) => group.recipes.length > 0);
}
