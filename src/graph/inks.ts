import { z } from 'zod';

/** CIE Lab, D50, 2 degree observer, absolute (white of a perfect diffuser = 100,0,0). */
export const labSchema = z
  .tuple([z.number().min(0).max(150), z.number().min(-200).max(200), z.number().min(-200).max(200)])
  .meta({ title: 'Lab', description: 'CIE Lab, D50, 2 degree, absolute' });

export const hexSchema = z.string().regex(/^#[0-9a-fA-F]{6}$/, 'write the colour as #rrggbb');

/** Letters, digits and dashes; also used in file names and PDF plate names. */
export const idSchema = z
  .string()
  .min(1)
  .max(64)
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/, 'use letters, digits, dot, dash and underscore')
  .refine((id) => !['__proto__', 'constructor', 'prototype'].includes(id), 'this name is reserved');

/** A spot ink. `lab` or `hex` is the colour of its solid on the reference stock. */
export const inkSchema = z
  .strictObject({
    id: idSchema,
    name: z.string().min(1).max(80),
    lab: labSchema.optional(),
    hex: hexSchema.optional(),
    opacity: z.number().min(0).max(1).default(0.005),
    gain: z.number().min(0).max(0.5).optional(),
  })
  .refine(
    (ink) => (ink.lab === undefined) !== (ink.hex === undefined),
    'give the colour once: as lab or as hex',
  );

export const surfaceSchema = z.enum(['coated', 'uncoated', 'newsprint']);

export const stockSchema = z.strictObject({ lab: labSchema, surface: surfaceSchema });

/** What `predict` reads: inks in print order on a paper. */
export const inkFileSchema = z.strictObject({
  paper: stockSchema,
  takeUp: z.number().min(0).max(1).default(0.95),
  inks: z.array(inkSchema).min(1).max(12),
  measured: z.array(z.strictObject({ inks: z.array(idSchema).min(1), lab: labSchema })).default([]),
});

export type Lab = z.infer<typeof labSchema>;
export type Ink = z.infer<typeof inkSchema>;
export type Stock = z.infer<typeof stockSchema>;
export type Surface = z.infer<typeof surfaceSchema>;
