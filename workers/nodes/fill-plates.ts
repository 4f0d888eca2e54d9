import type { Recipe } from '../../src/graph/recipe.ts';
import { fillPlates as kind } from '../../src/nodes/fill-plates.ts';
import { evaluation } from '../engine/evaluation.ts';
import type { RecipesValue, RegionsValue } from '../engine/values.ts';
import type { RegionFade } from '../kernels/fade.ts';
import { mmToPx } from '../kernels/plane.ts';

function fadesOf(regions: RegionsValue, recipes: RecipesValue, plates: readonly string[]): RegionFade[] {
  const { ppi, table } = regions;
  const px = (mm: number) => mmToPx(mm, ppi);
  const coverage = (recipe: Recipe) =>
    Uint8Array.from(plates, (plate) => Math.round(((recipe[plate] ?? 0) * 255) / 100));
  return table.flatMap(({ label, boxMm: [left, top, right, bottom] }, i) => {
    const fade = recipes.fades?.[i];
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

export const fillPlates = evaluation(kind, async ({ inputs, tools }) => {
  const { regions, recipes, inks } = inputs;
  const { labels, ppi, mm } = regions;
  const plates = inks.plates.map((place) => {
    const tints = new Uint8Array(recipes.recipes.length + 1);
    recipes.recipes.forEach((recipe, i) => {
      tints[i + 1] = Math.round(((recipe?.[place.id] ?? 0) * 255) / 100);
    });
    return { place, tints, out: tools.plane(labels.width, labels.height) };
  });
  const fades = fadesOf(
    regions,
    recipes,
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
