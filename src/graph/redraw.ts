import { z } from 'zod';
import { complaintSchema } from './complaint.ts';
import { idSchema } from './inks.ts';
import { fadeSchema } from './recipe.ts';
import { registerEntrySchema } from './register.ts';

export const REGION_STATES = ['kept', 'moved', 'split', 'merged', 'new', 'gone'] as const;
export type RegionState = (typeof REGION_STATES)[number];

/** What became of a region: the new one, the old one it comes from, or both. */
export const caseSchema = z.strictObject({
  new: idSchema.optional(),
  old: idSchema.optional(),
  state: z.enum(REGION_STATES),
  /** 0..1 */
  confidence: z.number().min(0).max(1),
});

/** An old place, from the middle of the drawing, times `scale`, turned and moved, is the new place. */
export const transformSchema = z.strictObject({
  scale: z.number(),
  shiftMm: z.tuple([z.number(), z.number()]),
  turnDeg: z.number(),
});

/** What `redraw` writes of what it carried over. */
export const carrySchema = z
  .strictObject({
    regions: z.array(caseSchema),
    transform: transformSchema,
    complaints: z.array(complaintSchema),
  })
  .meta({ title: 'What a redraw carried over' });

const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** A drawing the job had before, with all that hung on its places: putting it back restores them exactly. */
const earlierSchema = z.strictObject({
  drawing: hash,
  size: z.strictObject({ widthMm: z.number().nullable(), ppi: z.number().nullable() }),
  regions: z.array(registerEntrySchema),
  /** Settings that hold places, by node id. */
  places: z.record(idSchema, z.record(z.string(), z.json())),
  /** Fades by region, by colourway. */
  fades: z.record(idSchema, z.record(idSchema, fadeSchema)).optional(),
});

/** The last redraw, until it is put away. */
export const redrawSchema = z.strictObject({
  cases: z.array(caseSchema.extend({ accepted: z.boolean().optional() })).max(200_000),
  transform: transformSchema,
  /** Places of regions that are gone, in the old drawing. */
  gone: z.array(registerEntrySchema),
  /** The drawing before, and those before it, the latest first. */
  earlier: z.array(earlierSchema).max(5),
  /** What of areas, strokes, plate art and fades found no sure place. */
  left: z.array(complaintSchema).max(100).optional(),
});

export type Case = z.infer<typeof caseSchema>;
export type Carry = z.infer<typeof carrySchema>;
export type Transform = z.infer<typeof transformSchema>;
export type Redraw = z.infer<typeof redrawSchema>;
export type Earlier = z.infer<typeof earlierSchema>;
