import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';

export const regionTints = defineNode({
  kind: 'region-tints',
  version: 1,
  title: 'Region tints',
  help: 'Gives every region its recipe from the colourway in use.',
  role: 'artwork',
  runs: 'surface',
  readsColourway: true,
  inputs: {
    regions: { type: 'regions' },
    inks: { type: 'inks' },
    recipes: { type: 'recipes', optional: true },
  },
  outputs: { recipes: { type: 'recipes' } },
  settings: z.strictObject({}),
});
