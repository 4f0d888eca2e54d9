import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { measure, perPlate, seed } from './settings.ts';

export const plateGrain = defineNode({
  kind: 'plate-grain',
  version: 1,
  title: 'Plate grain',
  help: 'Breaks the tints up into a mottle, another on every plate; each tint keeps its mean.',
  role: 'artwork',
  runs: 'surface',
  inputs: { plates: { type: 'plates' }, area: { type: 'area', optional: true } },
  outputs: { plates: { type: 'plates' } },
  settings: z.strictObject({
    sizeMm: measure('mm', 0.05, 20, 0.35, { title: 'Size', help: 'Size of the largest blotches.' }),
    strengthPercent: measure('%', 0, 100, 35, {
      title: 'Strength',
      help: 'How far the tint wanders from its mean.',
    }),
    strengthPercentOf: perPlate(z.number().min(0).max(100), {
      title: 'Strength, by plate',
      help: 'For single plates.',
    }),
    hardness: measure('%', 0, 100, 15, {
      title: 'Hardness',
      help: 'From cloudy (0) to torn edges (100).',
    }),
    openSolidsPercent: measure('%', 0, 15, 0, {
      title: 'Open solids by',
      help: 'Lets the grain into solids: 10 leaves a solid at 90 % on average.',
    }),
    seed: seed(1),
  }),
});
