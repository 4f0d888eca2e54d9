import { z } from 'zod';
import { labSchema, surfaceSchema } from '../graph/inks.ts';
import { defineNode } from '../graph/node-kind.ts';
import { measure, seed } from './settings.ts';

export const paperStock = defineNode({
  kind: 'paper-stock',
  version: 1,
  title: 'Paper stock',
  help: 'The sheet the proof lies on: colour, surface, tooth and fibres.',
  role: 'simulation',
  runs: 'surface',
  inputs: {},
  outputs: { paper: { type: 'paper' } },
  settings: z.strictObject({
    lab: labSchema.default([95, 0.5, -2]).meta({ title: 'Colour', help: 'CIE Lab D50 of the bare sheet.' }),
    surface: surfaceSchema.default('uncoated').meta({
      title: 'Surface',
      help: 'How the sheet takes ink: tints gain more on open paper.',
    }),
    toothPercent: measure('%', 0, 100, 30, { title: 'Tooth', help: 'Unevenness of the surface.' }),
    toothMm: measure('mm', 0.05, 5, 0.25, { title: 'Size of the tooth', help: 'Width of its bumps.' }),
    fibresPercent: measure('%', 0, 100, 25, {
      title: 'Fibres',
      help: 'How much of the fibres in the sheet shows.',
    }),
    seed: seed(1),
  }),
});
