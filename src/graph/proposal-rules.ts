import { z } from 'zod';
import { recipeSchema } from './recipe.ts';

/** A recipe that a proposal may use, and the share of the sheet it should cover. */
export const paletteEntrySchema = z.strictObject({
  recipe: recipeSchema,
  /** % of the area of all regions; any when left out. */
  sharePercent: z.number().min(0).max(100).optional(),
});

/** From what, and by which rules, colourways are proposed. */
export const proposalRulesSchema = z.strictObject({
  palette: z.array(paletteEntrySchema).min(1).max(24),
  /** CIEDE2000 that neighbours should differ by. */
  contrast: z.number().min(0).max(100).default(8),
  /** Regions that print one recipe now print alike, where more than one recipe is in use. */
  asNow: z.boolean().default(true),
  /** Regions of about one size and shape print alike. */
  likeSized: z.boolean().default(true),
  /** Regions that lie within the same region print alike. */
  likePlaced: z.boolean().default(false),
  /** Regions of one named group print alike. */
  groups: z.boolean().default(true),
  /** Place in the palette of what touches the frame; any when null. */
  frame: z.number().int().min(0).max(23).nullable().default(null),
  /** Most of all tints together, as a mean over the sheet, %. */
  totalPercent: z.number().min(0).max(400).default(240),
});

export type PaletteEntry = z.infer<typeof paletteEntrySchema>;
export type ProposalRules = z.infer<typeof proposalRulesSchema>;
