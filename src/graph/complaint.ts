import { z } from 'zod';

/** A fault the person should hear of. `error` makes the command line exit with 1. */
export const complaintSchema = z.strictObject({
  code: z.string().regex(/^[a-z0-9-]+$/),
  severity: z.enum(['note', 'warning', 'error']),
  message: z.string().min(1),
  /** Where on the drawing, mm from its top left corner. */
  placeMm: z.tuple([z.number(), z.number()]).optional(),
  /** The size of the fault, in the unit its message names. */
  measure: z.number().optional(),
});

export type Complaint = z.infer<typeof complaintSchema>;

/** Bad input: the message is one line that says what is wrong and what to do. */
export class BadInput extends Error {
  override readonly name = 'BadInput';

  constructor(message: string) {
    super(message.replace(/\s+/g, ' '));
  }
}
