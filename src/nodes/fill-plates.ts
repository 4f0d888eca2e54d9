import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { perPlate } from './settings.ts';

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
  settings: z.strictObject({
    totalPercent: z.number().min(50).max(1200).nullable().default(null).meta({
      title: 'Most ink in all',
      unit: '%',
      help: 'Tints of all plates together at one spot. Empty: as much as the recipes say.',
    }),
    mostPercentOf: perPlate(z.number().min(0).max(100), {
      title: 'Most ink by plate',
      help: 'No tint of these plates goes above; 85 keeps a large solid from flooding.',
    }),
    plate: z.string().max(64).default('').meta({
      title: 'Yields first',
      help: 'The plate that gives way where all together are too much; what is still too much comes off the others alike.',
    }),
  }),
});
