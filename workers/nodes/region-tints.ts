import type { Recipe } from '../../src/graph/recipe.ts';
import { regionTints as kind } from '../../src/nodes/region-tints.ts';
import { evaluation } from '../engine/evaluation.ts';

export const regionTints = evaluation(kind, async ({ inputs, colourway, tools }) => {
  const { regions, inks } = inputs;
  const plates = new Set(inks.plates.map((plate) => plate.id));
  const unknown = new Set<string>();
  const known = (recipe: Recipe): Recipe => {
    for (const plate of Object.keys(recipe)) if (!plates.has(plate)) unknown.add(plate);
    return Object.fromEntries(Object.entries(recipe).filter(([plate]) => plates.has(plate)));
  };
  const others = known(colourway.others);
  const recipes = regions.ids.map((id, i) =>
    Object.hasOwn(colourway.recipes, id)
      ? known(colourway.recipes[id]!)
      : (inputs.recipes?.recipes[i] ?? others),
  );
  const fades = regions.ids.map((id) => {
    const fade = colourway.fades && Object.hasOwn(colourway.fades, id) ? colourway.fades[id]! : null;
    return fade && { ...fade, from: known(fade.from), to: known(fade.to) };
  });
  if (unknown.size > 0)
    tools.complain({
      code: 'recipe-plate-missing',
      severity: 'warning',
      message: `Recipes name plates that the ink set does not have (${[...unknown].join(', ')}); those tints are left out.`,
    });
  const own = regions.ids.filter((id) => Object.hasOwn(colourway.recipes, id)).length;
  if (inputs.recipes?.matched && own === regions.ids.length)
    tools.complain({
      code: 'rough-unused',
      severity: 'warning',
      message: `The rough changes nothing: each of the ${own} regions has a recipe of its own in this colourway; clear those that should follow the rough.`,
    });
  return { recipes: { type: 'recipes', recipes, ...(fades.some((fade) => fade) && { fades }) } };
});
