import { fillPlates as kind } from '../../src/nodes/fill-plates.ts';
import { evaluation } from '../engine/evaluation.ts';

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
  await tools.bands(
    'fill',
    { labels, plates: plates.map(({ out, tints }) => ({ out, tints })) },
    labels.height,
  );
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
