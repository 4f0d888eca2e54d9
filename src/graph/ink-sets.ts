import { z } from 'zod';
import { idSchema, labSchema } from './inks.ts';
import { recipeSchema } from './recipe.ts';

const distance = z.number().min(0);

/** What `ink-sets` prints: sets of inks that reach some colours, the best first. */
export const inkSetsSchema = z
  .strictObject({
    version: z.literal(1),
    sets: z.array(
      z.strictObject({
        /** Ids in print order. */
        inks: z.array(idSchema),
        /** Weighted mean and greatest CIEDE2000 between wanted and reached. */
        mean: distance,
        worst: distance,
        /** The best, or one that only a test print can tell from it. */
        withinError: z.boolean(),
        colours: z.array(
          z.strictObject({ wanted: labSchema, recipe: recipeSchema, lab: labSchema, distance }),
        ),
      }),
    ),
    tried: z.number().int(),
    /** False when there were too many sets to try them all. */
    everySet: z.boolean(),
  })
  .meta({ title: 'Sets of inks for some colours' });

export type InkSetsFile = z.infer<typeof inkSetsSchema>;
