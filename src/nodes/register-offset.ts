import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { choice, measure, seed } from './settings.ts';

const shift = z.strictObject({
  alongMm: z.number().min(-20).max(20).default(0),
  acrossMm: z.number().min(-20).max(20).default(0),
  rotationDeg: z.number().min(-5).max(5).default(0),
  /** Growth over the whole length of the feed. */
  stretchMm: z.number().min(-10).max(10).default(0),
});

export const registerOffset = defineNode({
  kind: 'register-offset',
  version: 1,
  title: 'Register offset',
  help: 'Shifts, turns and stretches plates against one another, as a press does.',
  role: 'simulation',
  runs: 'surface',
  inputs: { plates: { type: 'plates' } },
  outputs: { plates: { type: 'plates' } },
  settings: z.strictObject({
    feedEdge: choice(['top', 'right', 'bottom', 'left'], 'top', {
      title: 'Feed edge',
      help: 'The edge that enters the press first; stretch grows away from it.',
    }),
    how: choice(['fixed', 'by-chance'], 'fixed', {
      title: 'Offsets',
      help: 'As set for each plate, or drawn by chance within the tolerance.',
    }),
    offsets: z.record(z.string().max(64), shift).default({}).meta({
      title: 'Offset of each plate',
      help: 'Along and across the feed in mm, rotation in degrees, stretch in mm over the feed length.',
    }),
    toleranceAlongMm: measure('mm', 0, 5, 0.5, {
      title: 'Tolerance along the feed',
      help: 'Largest shift by chance.',
    }),
    toleranceAcrossMm: measure('mm', 0, 5, 0.25, {
      title: 'Tolerance across the feed',
      help: 'Largest shift by chance.',
    }),
    toleranceDeg: measure('deg', 0, 2, 0.05, {
      title: 'Tolerance of rotation',
      help: 'Largest turn by chance.',
    }),
    seed: seed(1),
  }),
});
