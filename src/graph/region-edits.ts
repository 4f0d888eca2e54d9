import { z } from 'zod';
import { idSchema } from './inks.ts';

const pointMm = z.tuple([z.number(), z.number()]);
const pathMm = z.array(pointMm).min(2).max(2000);

/**
 * What a person did by hand to the regions of a drawing. Places are mm from its top left corner, so that an edit
 * holds whenever the regions are found again.
 */
export const regionEditSchema = z.discriminatedUnion('does', [
  /** Takes down the wall that stands nearest to a place. */
  z.strictObject({ id: idSchema, does: z.literal('open-wall'), atMm: pointMm }),
  /** Stands a wall along a path. It prints nothing. */
  z.strictObject({ id: idSchema, does: z.literal('draw-wall'), pathMm }),
  /** Makes one region of the two that hold these places. */
  z.strictObject({ id: idSchema, does: z.literal('join'), fromMm: pointMm, toMm: pointMm }),
  /** Parts the region under the middle of a path along it, from line to line. */
  z.strictObject({ id: idSchema, does: z.literal('cut'), pathMm }),
  /** Lets regions run through the lone mark at a place as if it were paper. It still prints. */
  z.strictObject({ id: idSchema, does: z.literal('ignore-mark'), atMm: pointMm }),
]);

export type RegionEdit = z.infer<typeof regionEditSchema>;

/** Regions that a person gave a name, to choose and tint together. */
export const regionGroupSchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1).max(80),
  /** Region ids. */
  regions: z.array(idSchema).max(100_000),
});

export type RegionGroup = z.infer<typeof regionGroupSchema>;
