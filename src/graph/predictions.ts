import { z } from 'zod';
import { hexSchema, labSchema } from './inks.ts';
import { recipeSchema } from './recipe.ts';

/** What `predict` reads beside its inks: ink id -> tint in %. */
export const recipesSchema = z.array(recipeSchema).max(100_000).meta({ title: 'Recipes by ink' });

/** What `predict` prints: the colour of each recipe, in the same order. */
export const predictionsSchema = z
  .array(
    z.strictObject({
      recipe: recipeSchema,
      /** D50, absolute, to two decimals. */
      lab: labSchema,
      hex: hexSchema,
      /** False where the screen cannot show it. */
      onScreen: z.boolean(),
    }),
  )
  .meta({ title: 'Predicted colours' });

export type Predictions = z.infer<typeof predictionsSchema>;
