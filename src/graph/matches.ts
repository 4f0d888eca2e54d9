import { z } from 'zod';
import { complaintSchema } from './complaint.ts';
import { idSchema, labSchema } from './inks.ts';
import { recipeSchema } from './recipe.ts';
import { drawingSchema, pointMm } from './report.ts';

const foundSchema = z.strictObject({
  /** Tint in % by plate id. */
  recipe: recipeSchema,
  lab: labSchema,
  /** CIEDE2000 to the colour wanted. */
  distance: z.number().min(0),
});

/** What `match` writes: the recipe that comes nearest to each region's colour in a rough. */
export const matchesSchema = z
  .strictObject({
    version: z.literal(1),
    drawing: drawingSchema,
    /** How the rough was laid on the drawing, in the settings that Match rough takes. */
    fit: z.strictObject({ scalePercent: z.number(), shiftMm: pointMm, turnDeg: z.number() }),
    /** Regions that the rough paints. */
    regions: z.array(
      z.strictObject({
        id: idSchema,
        anchorMm: pointMm,
        areaMm2: z.number(),
        wantedLab: labSchema,
        ...foundSchema.shape,
        outOfReach: z.boolean(),
        /** The best in other sets of plates, where they were asked for. */
        alternatives: z.array(foundSchema).optional(),
      }),
    ),
    /** Ids of regions that the rough does not paint. */
    bare: z.array(idSchema),
    complaints: z.array(complaintSchema),
  })
  .meta({ title: 'Recipes from a rough' });

export type Matches = z.infer<typeof matchesSchema>;
