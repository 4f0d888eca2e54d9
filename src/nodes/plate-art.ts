import { z } from 'zod';
import { hashSchema } from '../graph/job.ts';
import { defineNode } from '../graph/node-kind.ts';
import { choice, measure } from './settings.ts';

export const plateArt = defineNode({
  kind: 'plate-art',
  version: 1,
  title: 'Plate art',
  help: 'Lays a grey picture on one plate: a scanned brush, a texture, a plate worked on elsewhere.',
  role: 'artwork',
  runs: 'surface',
  inputs: { plates: { type: 'plates' }, area: { type: 'area', optional: true } },
  outputs: { plates: { type: 'plates' } },
  settings: z.strictObject({
    asset: hashSchema
      .nullable()
      .default(null)
      .meta({ title: 'Picture', help: 'Dark prints: PNG, JPEG, WebP, TIFF or SVG.' }),
    plate: z
      .string()
      .max(64)
      .default('')
      .meta({ title: 'Plate', help: 'Id of the plate it lies on; the last one printed when empty.' }),
    does: choice(['lay', 'set', 'cut'], 'lay', {
      title: 'What it does',
      help: 'Lay: the stronger of plate and picture prints. Set: the picture takes the place of the plate. Cut: what is dark in it is taken out of the plate.',
    }),
    strengthPercent: measure('%', 0, 100, 100, {
      title: 'Strength',
      help: 'Tint that black of the picture stands for.',
    }),
    xMm: measure('mm', -5000, 5000, 0, { title: 'From the left', help: 'Where its upper left corner lies.' }),
    yMm: measure('mm', -5000, 5000, 0, { title: 'From the top', help: 'Where its upper left corner lies.' }),
    widthMm: measure('mm', 0, 5000, 0, {
      title: 'Width',
      help: 'How wide it lies; 0 takes the whole sheet.',
    }),
    turnDeg: measure('deg', -45, 45, 0, { title: 'Turn', help: 'Clockwise about its middle.' }),
  }),
});
