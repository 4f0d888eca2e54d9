import { z } from 'zod';
import { hashSchema } from '../graph/job.ts';
import { defineNode } from '../graph/node-kind.ts';
import { choice } from './settings.ts';

export const lineDrawing = defineNode({
  kind: 'line-drawing',
  version: 2,
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
    ppi: z.number().min(20).max(12_000).nullable().default(null).meta({
      title: 'Pixels per inch',
      unit: 'ppi',
      help: 'Instead of what the file says. A vector drawing is drawn out at this; at 600 when empty.',
    }),
    channel: choice(['auto', 'darkness', 'colour', 'transparency'], 'auto', {
      title: 'Line is read from',
      help: 'Darkness, strength of colour (a yellow line counts in full) or transparency. Auto takes lines of colour in full and leaves light washes to darkness.',
    }),
    artAt: choice(['trim', 'bleed'], 'trim', {
      title: 'Drawing ends at',
      help: 'Whether the edge of the picture is where the sheet is cut, or beyond it.',
    }),
  }),
});
