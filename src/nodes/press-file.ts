import { z } from 'zod';
import { defineNode } from '../graph/node-kind.ts';
import { patternProblem } from '../press/file-names.ts';
import { choice } from './settings.ts';

export const pressFile = defineNode({
  kind: 'press-file',
  version: 1,
  title: 'Press file',
  help: 'Delivers the plates that reach it to the printer.',
  role: 'delivery',
  runs: 'surface',
  inputs: { plates: { type: 'plates' }, sheet: { type: 'sheet', optional: true } },
  outputs: {},
  settings: z.strictObject({
    pdf: choice(['one-image', 'by-plate', 'film'], 'one-image', {
      title: 'Press PDF',
      help: 'One image: all plates woven together (DeviceN). By plate: one image each, overprinting (Separation). Film: one bit a pixel, as it is exposed.',
    }),
    tiff: choice(['grey', 'one-bit'], 'grey', {
      title: 'TIFF',
      help: 'Grey: 256 steps. One bit: black and clear only, for plates that are screened already.',
    }),
    tiffPages: choice(['single', 'together'], 'single', {
      title: 'TIFF pages',
      help: 'A file for each plate, or all plates as pages of one.',
    }),
    plateNames: choice(['ids', 'inks'], 'ids', {
      title: 'Plates are called',
      help: 'In the press PDF: by the names of the plates, or by those of their inks.',
    }),
    fileNames: z
      .string()
      .min(1)
      .max(120)
      .superRefine((pattern, context) => {
        const problem = patternProblem(pattern);
        if (problem) context.addIssue({ code: 'custom', message: problem });
      })
      .default('{job}-{size}-{order}-{ink}')
      .meta({
        title: 'File names',
        help: 'Of grey PDFs and TIFFs: {job}, {size}, {order}, {plate}, {ink}, {colourway} and {side} are filled in.',
      }),
  }),
});
