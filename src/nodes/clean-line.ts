import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { choice, measure } from './settings.ts';

export const cleanLine = defineNode({
  kind: 'clean-line',
  version: 1,
  title: 'Clean line',
  help: 'Parts line from paper, takes specks away, makes the line a little heavier or lighter.',
  role: 'artwork',
  runs: 'structure',
  inputs: { drawing: { type: 'drawing' } },
  outputs: { drawing: { type: 'drawing' } },
  settings: z.strictObject({
    threshold: choice(['auto', 'set'], 'auto', {
      title: 'Threshold',
      help: 'Where grey becomes line: found from the drawing, or set by you.',
    }),
    level: measure('%', 1, 99, 50, {
      title: 'Level',
      help: 'What is darker than this counts as line, when the threshold is set.',
    }),
    softness: measure('%', 0, 100, 100, {
      title: 'Soft edge',
      help: 'How much of the soft edge of the line is kept for printing; 0 gives a hard edge.',
    }),
    speckMm2: measure('mm2', 0, 5, 0.03, {
      title: 'Specks up to',
      help: 'Lone marks smaller than this are dust and go.',
    }),
    heavierMm: measure('mm', -0.5, 0.5, 0, {
      title: 'Heavier by',
      help: 'Moves both edges of every line outward; below 0 makes the line finer.',
    }),
  }),
});
