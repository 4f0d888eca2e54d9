import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { hashSchema } from '../graph/job.ts';
import { choice, measure } from './settings.ts';

export const lineDrawing = defineNode({
  kind: 'line-drawing',
  version: 1,
  title: 'Line drawing',
  help: 'The drawing that everything is made from, at its printed size.',
  role: 'source',
  runs: 'structure',
  inputs: {},
  outputs: { drawing: { type: 'drawing' } },
  settings: z.strictObject({
    asset: hashSchema
      .nullable()
      .default(null)
      .meta({ title: 'File', help: 'The picture of the lines: PNG, JPEG, WebP, TIFF or SVG.' }),
    widthMm: z.number().min(1).max(5000).nullable().default(null).meta({
      title: 'Printed width',
      unit: 'mm',
      help: 'How wide the drawing prints. Empty: as the file says.',
    }),
    vectorPpi: measure('ppi', 72, 2400, 600, {
      title: 'Sharpness of vector drawings',
      help: 'Pixels per inch at which an SVG is drawn out.',
    }),
    channel: choice(['auto', 'darkness', 'colour', 'transparency'], 'auto', {
      title: 'Line is read from',
      help: 'Darkness, strength of colour (a yellow line counts in full) or transparency; auto chooses.',
    }),
    artAt: choice(['trim', 'bleed'], 'trim', {
      title: 'Drawing ends at',
      help: 'Whether the edge of the picture is where the sheet is cut, or beyond it.',
    }),
  }),
});
