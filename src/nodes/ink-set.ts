import { z } from 'zod';
import { idSchema, inkSchema, measurementSchema, stockSchema } from '../graph/inks.ts';
import { defineNode } from '../graph/node-kind.ts';
import type { Printing } from '../ink/model-input.ts';
import { measure } from './settings.ts';

const plateSchema = z.strictObject({
  id: idSchema,
  /** Id of the ink it prints in. */
  ink: idSchema,
  /** Plates of one pass print wet on wet. */
  pass: z.number().int().min(1).max(12),
});

export const inkSet = defineNode({
  kind: 'ink-set',
  version: 1,
  title: 'Ink set',
  help: 'The plates in print order, each with its ink and its pass.',
  role: 'source',
  runs: 'surface',
  inputs: {},
  outputs: { inks: { type: 'inks' } },
  settings: z.strictObject({
    inks: z
      .array(inkSchema)
      .min(1)
      .max(12)
      .default([{ id: 'soot', name: 'Soot', lab: [20, 1, 1], opacity: 0.02 }])
      .meta({ title: 'Inks', help: 'The inks this job prints in, with the colour of their solids.' }),
    plates: z
      .array(plateSchema)
      .min(1)
      .max(12)
      .default([{ id: 'soot', ink: 'soot', pass: 1 }])
      .meta({ title: 'Plates', help: 'In print order, the first down first.' }),
    readOn: stockSchema.default({ lab: [95, 0.5, -2], surface: 'uncoated' }).meta({
      title: 'Colours read on',
      help: 'The paper on which the inks have the colours given here.',
    }),
    measured: z.array(measurementSchema).max(4096).default([]).meta({
      title: 'Measured colours',
      help: 'Solids and overprints read from a print; they replace what is predicted.',
    }),
    takeUps: z
      .array(
        z.strictObject({
          below: z.number().int().min(1).max(12),
          above: z.number().int().min(1).max(12),
          percent: z.number().min(0).max(100),
        }),
      )
      .max(144)
      .default([])
      .meta({
        title: 'Take-up by pass',
        help: 'Where an ink of one pass takes otherwise on an ink of another; of one pass on itself: wet on wet.',
      }),
    takeUpPercent: measure('%', 0, 100, 95, {
      title: 'Take-up',
      help: 'How fully an ink takes on a dry ink beneath it.',
    }),
  }),
});

/** How the inks of a set print, from its settings. Readings of inks that no plate prints are left out. */
export function printingOf(set: z.infer<typeof inkSet.settings>): Printing {
  const printed = new Set(set.plates.map(({ ink }) => ink));
  return {
    takeUp: set.takeUpPercent / 100,
    takeUps: set.takeUps.map(({ below, above, percent }) => ({ below, above, takeUp: percent / 100 })),
    measured: set.measured.filter(({ inks }) => inks.every((ink) => printed.has(ink))),
    reference: set.readOn,
  };
}
