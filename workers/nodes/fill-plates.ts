import type { SettingsOf } from '../../src/graph/node-kind.ts';
import type { Recipe } from '../../src/graph/recipe.ts';
import { fillPlates as kind } from '../../src/nodes/fill-plates.ts';
import { limited, totalOf } from '../../src/press/ink-limit.ts';
import { evaluation } from '../engine/evaluation.ts';
import type { RecipesValue, RegionsValue } from '../engine/values.ts';
import type { RegionFade } from '../kernels/fade.ts';
import { mmToPx } from '../kernels/plane.ts';

function fadesOf(
  regions: RegionsValue,
  fades: RecipesValue['fades'],
  plates: readonly string[],
): RegionFade[] {
  const { ppi, table } = regions;
  const px = (mm: number) => mmToPx(mm, ppi);
  const coverage = (recipe: Recipe) =>
    Uint8Array.from(plates, (plate) => Math.round(((recipe[plate] ?? 0) * 255) / 100));
  return table.flatMap(({ label, boxMm: [left, top, right, bottom] }, i) => {
    const fade = fades?.[i];
    if (!fade) return [];
    return [
      {
        label,
        shape: fade.shape,
        path: fade.pathMm.map(([x, y]) => [px(x), px(y)] as const),
        box: [
          Math.floor(px(left)) - 1,
          Math.floor(px(top)) - 1,
          Math.ceil(px(right)) + 1,
          Math.ceil(px(bottom)) + 1,
        ] as const,
        from: coverage(fade.from),
        to: coverage(fade.to),
      },
    ];
  });
}

/** The recipes within the limits of the press, and how many had to be brought down. */
function withinLimits(given: RecipesValue, settings: SettingsOf<typeof kind>) {
  const limits = {
    mostOf: settings.mostPercentOf,
    total: settings.totalPercent,
    yieldsFirst: settings.plate,
  };
  const recipes = given.recipes.map((recipe) => recipe && limited(recipe, limits));
  const fades = given.fades?.map(
    (fade) => fade && { ...fade, from: limited(fade.from, limits), to: limited(fade.to, limits) },
  );
  const changed = recipes.filter((recipe, i) => {
    const before = given.recipes[i];
    return recipe && before && totalOf(recipe) < totalOf(before);
  });
  return { recipes, fades, changed: changed.length };
}

export const fillPlates = evaluation(kind, async ({ settings, inputs, tools }) => {
  const { regions, inks } = inputs;
  const { recipes, fades: limitedFades, changed } = withinLimits(inputs.recipes, settings);
  if (changed > 0)
    tools.complain({
      code: 'ink-limited',
      severity: 'note',
      message: `The tints of ${changed} ${changed === 1 ? 'region was' : 'regions were'} brought down to the limits of Fill plates.`,
    });
  const { labels, ppi, mm } = regions;
  const plates = inks.plates.map((place) => {
    const tints = new Uint8Array(recipes.length + 1);
    recipes.forEach((recipe, i) => {
      tints[i + 1] = Math.round(((recipe?.[place.id] ?? 0) * 255) / 100);
    });
    return { place, tints, out: tools.plane(labels.width, labels.height) };
  });
  const fades = fadesOf(
    regions,
    limitedFades,
    plates.map(({ place }) => place.id),
  );
  const outs = plates.map(({ out, tints }) => ({ out, tints }));
  await tools.bands('fill', { labels, plates: outs, fades }, labels.height);
  return {
    plates: {
      type: 'plates',
      plates: plates.map(({ place, out }) => ({ ...place, coverage: out })),
      printing: inks.printing,
      ppi,
      mm,
    },
  };
});
