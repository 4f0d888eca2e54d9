import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';

export const fillPlates = defineNode({
  kind: 'fill-plates',
  version: 1,
  title: 'Fill plates',
  help: 'Lays the tints of every region onto the plates.',
  role: 'artwork',
  runs: 'surface',
  inputs: {
    regions: { type: 'regions' },
    recipes: { type: 'recipes' },
    inks: { type: 'inks' },
  },
  outputs: { plates: { type: 'plates' } },
  settings: z.strictObject({}),
});
