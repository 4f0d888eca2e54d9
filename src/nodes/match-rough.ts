import { z } from 'zod';
import { hashSchema } from '../graph/job.ts';
import { defineNode } from '../graph/node-kind.ts';
import { choice, measure } from './settings.ts';

export const matchRough = defineNode({
  kind: 'match-rough',
  version: 2,
  title: 'Match rough',
  help: 'Gives every region the recipe that comes nearest to its colour in a colour sketch.',
  role: 'artwork',
  runs: 'structure',
  inputs: {
    regions: { type: 'regions' },
    inks: { type: 'inks' },
    paper: { type: 'paper', optional: true },
  },
  outputs: { recipes: { type: 'recipes' } },
  settings: z.strictObject({
    asset: hashSchema
      .nullable()
      .default(null)
      .meta({ title: 'Rough', help: 'The colour sketch of the drawing: PNG, JPEG, WebP, TIFF or SVG.' }),
    fit: choice(['auto', 'frame', 'set'], 'auto', {
      title: 'Fit',
      help: 'Auto lays the rough over the drawing and looks for the place where every region has one colour; frame stretches it edge on edge; set takes what is typed below.',
    }),
    scalePercent: measure('%', 10, 1000, 100, {
      title: 'Scale',
      help: 'How large the rough is laid on. 100 %: edge on edge, or where its shape is another, so that it just covers the drawing. Used when the fit is set.',
    }),
    shiftXMm: measure('mm', -2000, 2000, 0, {
      title: 'Shift to the right',
      help: 'How far the rough is moved. Used when the fit is set.',
    }),
    shiftYMm: measure('mm', -2000, 2000, 0, {
      title: 'Shift down',
      help: 'How far the rough is moved. Used when the fit is set.',
    }),
    turnDeg: measure('deg', -180, 180, 0, {
      title: 'Turn',
      help: 'How far the rough is turned clockwise about its middle. Used when the fit is set.',
    }),
    white: choice(['paper', 'screen'], 'paper', {
      title: 'White of the rough',
      help: 'Paper: white stands for bare paper, and all colours are meant relative to it. Screen: white is a white of its own.',
    }),
    stepPercent: measure('%', 1, 50, 10, {
      title: 'Tint step',
      help: 'How far tints are apart that may be chosen.',
    }),
    leastPercent: measure('%', 1, 100, 15, {
      title: 'Palest tint',
      help: 'Tints below vanish on the press; none is chosen between it and nothing.',
    }),
    mostPercent: measure('%', 1, 100, 85, {
      title: 'Darkest tint',
      help: 'Tints above close up on the press; none is chosen between it and the solid.',
    }),
    mostInks: z
      .number()
      .int()
      .min(1)
      .max(12)
      .default(3)
      .meta({ title: 'Inks on a spot', help: 'How many inks may lie on one another at most.' }),
    inkPenalty: z.number().min(0).max(20).default(0.5).meta({
      title: 'Worth of an ink',
      help: 'By how much (CIEDE2000) a further ink must better a colour to be used for it.',
    }),
    totalPercent: measure('%', 10, 1200, 240, {
      title: 'Ink on a spot',
      help: 'Most of all tints together.',
    }),
  }),
});
