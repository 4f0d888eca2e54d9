import { z } from 'zod';
import { complaintSchema } from './complaint.ts';
import { recipeSchema } from './recipe.ts';

export const pointMm = z.tuple([z.number(), z.number()]);

export const drawingSchema = z.strictObject({
  width: z.number().int(),
  height: z.number().int(),
  ppi: z.number(),
  mm: z.tuple([z.number(), z.number()]),
});

const reportRegionSchema = z.strictObject({
  id: z.string(),
  label: z.number().int().min(1),
  areaMm2: z.number(),
  anchorMm: pointMm,
  touchesFrame: z.boolean(),
  recipe: recipeSchema,
});

/** The dots of a plate: made, or planned for the press to make. */
const plateScreenSchema = z.strictObject({
  how: z.enum(['screened', 'planned']),
  kind: z.enum(['am', 'fm']),
  lpi: z.number().optional(),
  /** Anticlockwise from across the sheet. */
  angleDeg: z.number().optional(),
  dot: z.enum(['round', 'ellipse', 'line']).optional(),
  dotMm: z.number().optional(),
  /** Whether the tone curve of the ink was taken off the tints. */
  toneApplied: z.boolean(),
});

const reportPlateSchema = z.strictObject({
  id: z.string(),
  ink: z.string(),
  order: z.number().int().min(1),
  pass: z.number().int().min(1),
  ppi: z.number(),
  file: z.string().nullable(),
  coveragePercent: z.number(),
  /** Absent where no Halftone stands before the Press file. */
  screen: plateScreenSchema.optional(),
});

/** What `render` says of its run. */
export const reportSchema = z
  .strictObject({
    version: z.literal(1),
    drawing: drawingSchema,
    regions: z.array(reportRegionSchema),
    plates: z.array(reportPlateSchema),
    complaints: z.array(complaintSchema),
    /** Milliseconds a node took; a node that came from the cache is not listed. */
    timings: z.record(z.string(), z.number()),
    peakBytes: z.number().int(),
  })
  .meta({ title: 'Report of a render' });

/** What `regions` writes beside its label picture. */
export const regionsFileSchema = z
  .strictObject({
    version: z.literal(1),
    drawing: drawingSchema,
    regions: z.array(
      reportRegionSchema.omit({ recipe: true }).extend({
        /** left, top, right, bottom */
        boxMm: z.tuple([z.number(), z.number(), z.number(), z.number()]),
        neighbours: z.array(z.strictObject({ id: z.string(), sharedMm: z.number() })),
        /** Id of the region that wholly surrounds this one. */
        inside: z.string().nullable(),
      }),
    ),
    walls: z.array(
      z.strictObject({
        id: z.string(),
        widthMm: z.number(),
        placeMm: pointMm,
        between: z.tuple([z.string(), z.string()]),
      }),
    ),
    openGaps: z.array(z.strictObject({ widthMm: z.number(), placeMm: pointMm })),
    complaints: z.array(complaintSchema),
  })
  .meta({ title: 'Regions of a drawing' });

export type Report = z.infer<typeof reportSchema>;
export type RegionsFile = z.infer<typeof regionsFileSchema>;
