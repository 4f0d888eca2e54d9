import { z } from 'zod';
import { idSchema } from './inks.ts';

/** A fault the person should hear of. `error` makes the command line exit with 1. */
export const complaintSchema = z.strictObject({
  code: z.string().regex(/^[a-z0-9-]+$/),
  severity: z.enum(['note', 'warning', 'error']),
  message: z.string().min(1),
  /** Where on the drawing, mm from its top left corner. */
  placeMm: z.tuple([z.number(), z.number()]).optional(),
  /** The size of the fault, in the unit its message names. */
  measure: z.number().optional(),
  /** Id of the plate it is about. */
  plate: idSchema.optional(),
  /** Id of the region it is about. */
  region: idSchema.optional(),
  /** The person said that it is meant: it counts as no fault. */
  meant: z.literal(true).optional(),
});

/** A fault that is meant: one of the same code, plate and region; without a region, one near the place. */
export const meantSchema = complaintSchema.pick({ code: true, plate: true, region: true, placeMm: true });

export type Complaint = z.infer<typeof complaintSchema>;
export type Meant = z.infer<typeof meantSchema>;

/** Bad input: the message is one line that says what is wrong and what to do. */
export class BadInput extends Error {
  override readonly name = 'BadInput';

  constructor(message: string) {
    super(message.replace(/\s+/g, ' '));
  }
}
