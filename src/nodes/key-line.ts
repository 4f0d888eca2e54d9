import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { choice, measure, perPlate } from './settings.ts';

const lineTint = z.number().min(0).max(100);

export const keyLine = defineNode({
  kind: 'key-line',
  version: 1,
  title: 'Key line',
  help: 'Prints the lines on the plates and takes the fills away beneath them.',
  role: 'artwork',
  runs: 'surface',
  inputs: {
    plates: { type: 'plates' },
    drawing: { type: 'drawing' },
    area: { type: 'area', optional: true },
  },
  outputs: { plates: { type: 'plates' } },
  settings: z.strictObject({
    tintPercent: measure('%', 0, 100, 100, {
      title: 'Line prints at',
      help: 'Tint of the line on every plate that has no tint of its own below.',
    }),
    tintPercentOf: perPlate(lineTint, {
      title: 'Line prints at, by plate',
      help: 'Tint of the line on single plates; 0 leaves the line out of a plate.',
    }),
    fills: choice(['knocked-out', 'kept'], 'knocked-out', {
      title: 'Fills under the line',
      help: 'Knocked out: removed where the line prints. Kept: the line prints over them.',
    }),
    fillsOf: perPlate(z.enum(['knocked-out', 'kept']), {
      title: 'Fills under the line, by plate',
      help: 'For single plates.',
    }),
    insetMm: measure('mm', 0, 2, 0.05, {
      title: 'Knockout starts inside by',
      help: 'Fills reach this far under the edge of the line, so that no pale rim shows.',
    }),
  }),
});
