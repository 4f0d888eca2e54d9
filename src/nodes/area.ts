import { z } from 'zod';
import { idSchema } from '../graph/inks.ts';
import { defineNode } from '../graph/node-kind.ts';
import { measure } from './settings.ts';

const pointMm = z.tuple([z.number().min(-5000).max(5000), z.number().min(-5000).max(5000)]);

/** Shapes whose outline was drawn, closed from the last corner to the first. */
const shapeSchema = z.strictObject({ id: idSchema, pathMm: z.array(pointMm).min(3).max(5000) });

/** Line that lies near a path. */
const lineNearSchema = z.strictObject({
  id: idSchema,
  pathMm: z.array(pointMm).min(1).max(5000),
  withinMm: z.number().min(0.1).max(200),
});

export const area = defineNode({
  kind: 'area',
  version: 1,
  title: 'Area',
  help: 'A part of the sheet that other steps keep to: drawn shapes, whole regions, or the line near a place.',
  role: 'source',
  runs: 'surface',
  inputs: { drawing: { type: 'drawing', optional: true }, regions: { type: 'regions', optional: true } },
  outputs: { area: { type: 'area' } },
  settings: z.strictObject({
    shapes: z.array(shapeSchema).max(500).default([]).meta({
      title: 'Shapes',
      help: 'Outlines drawn on the print with the lasso, the polygon or the rectangle.',
    }),
    regions: z
      .array(idSchema)
      .max(100_000)
      .default([])
      .meta({ title: 'Regions', help: 'Whole regions, chosen on the print.' }),
    lines: z
      .array(lineNearSchema)
      .max(500)
      .default([])
      .meta({ title: 'Line near', help: 'The line of the drawing near a path on the print.' }),
    invert: z
      .boolean()
      .default(false)
      .meta({ title: 'All but this', help: 'Takes everything else instead.' }),
    growMm: measure('mm', -50, 50, 0, { title: 'Grow', help: 'Widens the area; below 0 narrows it.' }),
    featherMm: measure('mm', 0, 50, 0, { title: 'Feather', help: 'How wide its edge fades out.' }),
  }),
});
