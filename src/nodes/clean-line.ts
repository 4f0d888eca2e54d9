import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { choice, measure } from './settings.ts';

export const cleanLine = defineNode({
  kind: 'clean-line',
  version: 2,
  title: 'Clean line',
  help: 'Parts line from paper, takes shade and specks away, makes the line a little heavier or finer.',
  role: 'artwork',
  runs: 'structure',
  inputs: { drawing: { type: 'drawing' } },
  outputs: { drawing: { type: 'drawing' } },
  settings: z.strictObject({
    light: choice(['auto', 'even', 'as-is'], 'auto', {
      title: 'Light',
      help: 'Takes shade and light washes off the paper: always, never, or where a scan needs it. Solids stay.',
    }),
    straighten: choice(['off', 'auto', 'set'], 'off', {
      title: 'Straighten',
      help: 'Turns the drawing until its straight lines stand level, or as far as you set.',
    }),
    turnDeg: measure('deg', -10, 10, 0, {
      title: 'Turn by',
      help: 'Clockwise, below 0 anticlockwise, when Straighten is set by you.',
    }),
    threshold: choice(['auto', 'local', 'set'], 'auto', {
      title: 'Threshold',
      help: 'Where grey becomes line: found from the drawing, from the paper around each spot, or set by you.',
    }),
    level: measure('%', 1, 99, 50, {
      title: 'Level',
      help: 'What is darker than this counts as line, when the threshold is set.',
    }),
    aroundMm: measure('mm', 0.5, 30, 4, {
      title: 'Looks around',
      help: 'How wide the surroundings are that a local threshold compares with; wider than any line.',
    }),
    darkerPercent: z.number().min(1).max(90).nullable().default(null).meta({
      title: 'Darker by',
      unit: '%',
      help: 'How much darker than its surroundings line must be, when the threshold is local. Empty: above the grain of the paper.',
    }),
    softness: measure('%', 0, 100, 100, {
      title: 'Soft edge',
      help: 'How much of the soft edge of the line is kept for printing; 0 gives a hard edge.',
    }),
    speckMm2: measure('mm2', 0, 5, 0.03, {
      title: 'Specks up to',
      help: 'Lone marks smaller than this are dust and go.',
    }),
    pinholeMm2: z.number().min(0).max(1).nullable().default(null).meta({
      title: 'Pinholes up to',
      unit: 'mm2',
      help: 'Paper showing through a line, smaller than this, is filled. Empty: 0.01 in a scan, none in clean artwork.',
    }),
    heavierMm: measure('mm', -0.5, 0.5, 0, {
      title: 'Heavier by',
      help: 'Moves both edges of every line outward; below 0 makes the line finer. Lines neither weld nor break.',
    }),
  }),
});
