import { z } from 'zod';
import { idSchema } from './inks.ts';

/** A tint in % of the solid. */
export const tintSchema = z.number().min(0).max(100);

/** What a region prints: plate id -> tint in %. A plate that is not named prints nothing there. */
export const recipeSchema = z.record(idSchema, tintSchema);

/**
 * A recipe that runs from one into another within its region: along a straight line from the first point to the last,
 * outwards from the first to the distance of the last, or along a path.
 */
export const fadeSchema = z.strictObject({
  shape: z.enum(['linear', 'radial', 'path']),
  from: recipeSchema,
  to: recipeSchema,
  /** mm from the top left corner of the drawing. */
  pathMm: z
    .array(z.tuple([z.number(), z.number()]))
    .min(2)
    .max(2000),
});

/** One complete assignment of recipes to regions. */
export const colourwaySchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1).max(80),
  /** Region id -> recipe. */
  recipes: z.record(idSchema, recipeSchema).default({}),
  /** Region id -> fade; takes the place of its recipe. */
  fades: z.record(idSchema, fadeSchema).optional(),
  /** What every region without a recipe of its own prints. */
  others: recipeSchema.default({}),
});

export type Recipe = z.infer<typeof recipeSchema>;
export type Fade = z.infer<typeof fadeSchema>;
export type Colourway = z.infer<typeof colourwaySchema>;

/** A recipe from shares 0..1 of plates, to a tenth of a percent; plates that print nothing are left out. */
export function recipeOfShares(shares: readonly number[], plates: readonly string[]): Recipe {
  const tints = plates.map((plate, i) => [plate, Math.round(shares[i]! * 1000) / 10] as const);
  return Object.fromEntries(tints.filter(([, tint]) => tint > 0));
}
