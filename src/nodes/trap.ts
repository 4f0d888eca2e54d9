import { z } from 'zod';
import { idSchema } from '../graph/inks.ts';
import { defineNode } from '../graph/node-kind.ts';
import { measure } from './settings.ts';

/** A border with a width of its own; 0 leaves it without a trap. */
const ownWidth = z.strictObject({
  /** Ids of the two regions. */
  between: z.tuple([idSchema, idSchema]),
  widthMm: z.number().min(0).max(2),
});

export const trap = defineNode({
  kind: 'trap',
  version: 1,
  title: 'Trap',
  help: 'Lets fills that meet overlap a little, so that no paper shows when plates drift. Stands before Key line.',
  role: 'artwork',
  runs: 'surface',
  inputs: {
    plates: { type: 'plates' },
    regions: { type: 'regions' },
    drawing: { type: 'drawing' },
    area: { type: 'area', optional: true },
  },
  outputs: { plates: { type: 'plates' } },
  settings: z.strictObject({
    widthMm: measure('mm', 0, 2, 0.35, {
      title: 'Width',
      help: 'How far one fill reaches under its neighbour, or supporting inks stay back from paper.',
    }),
    toleranceMm: measure('mm', 0, 5, 0.35, {
      title: 'Line that covers',
      help: 'Where the line covers a border by this much on both sides there is no trap.',
    }),
    pairs: z.array(ownWidth).max(10_000).default([]).meta({
      title: 'Borders with a width of their own',
      help: 'Set from Register slack, border by border.',
    }),
  }),
});
