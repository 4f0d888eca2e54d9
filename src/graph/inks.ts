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

const percent = z.number().min(0).max(100);

/** Points of a film-to-print curve in %, film rising; 0 and 100 need not be among them. */
export const curveSchema = z
  .array(z.tuple([percent, percent]))
  .min(1)
  .max(64)
  .refine(
    (points) => points.every(([film], i) => i === 0 || film > points[i - 1]![0]),
    'the film values of the curve must rise from point to point',
  );

/**
 * A spot ink. `lab` or `hex` is the colour of its solid on the reference stock. How its tints grow is said at
 * most once: `gain` is DESIGN's g, `toneGainPercent` what an instrument reads above 50 at 50 %,
 * `curvePercent` what each tint on the film reads on the print.
 */
export const inkSchema = z
  .strictObject({
    id: idSchema,
    name: z.string().min(1).max(80),
    lab: labSchema.optional(),
    hex: hexSchema.optional(),
    opacity: z.number().min(0).max(1).default(0.005),
    gain: z.number().min(0).max(0.5).optional(),
    toneGainPercent: z.number().min(-20).max(45).optional(),
    curvePercent: curveSchema.optional(),
    note: z.string().max(400).optional(),
  })
  .refine(
    (ink) => (ink.lab === undefined) !== (ink.hex === undefined),
    'give the colour once: as lab or as hex',
  )
  .refine(
    (ink) =>
      [ink.gain, ink.toneGainPercent, ink.curvePercent].filter((each) => each !== undefined).length <= 1,
    'say once how the tints grow: gain, toneGainPercent or curvePercent',
  );

/** How a colour was read, the most trustworthy first. */
export const READINGS = ['instrument', 'scan', 'photo', 'eye'] as const;

/**
 * The colour that the solids of some inks give on each other, read from a print. A photo or a judgement by eye
 * counts only once a person has accepted it.
 */
export const measurementSchema = z.strictObject({
  inks: z.array(idSchema).min(1).max(12),
  lab: labSchema,
  /** An instrument when left out. */
  how: z.enum(READINGS).optional(),
  accepted: z.boolean().optional(),
});

/** Take-up of the inks of one pass on the inks of another, 0..1. Of two alike: wet on wet. */
export const takeUpSchema = z.strictObject({
  below: z.number().int().min(1).max(12),
  above: z.number().int().min(1).max(12),
  takeUp: z.number().min(0).max(1),
});

export const surfaceSchema = z.enum(['coated', 'uncoated', 'newsprint']);

export const stockSchema = z.strictObject({ lab: labSchema, surface: surfaceSchema });

/** What `predict` reads: inks in print order on a paper. */
export const inkFileSchema = z.strictObject({
  paper: stockSchema,
  takeUp: z.number().min(0).max(1).default(0.95),
  /** Where two passes differ from `takeUp`. */
  takeUps: z.array(takeUpSchema).max(144).default([]),
  inks: z.array(inkSchema).min(1).max(12),
  /** The pass of each ink; each its own where this is left out. */
  passes: z.array(z.number().int().min(1).max(12)).optional(),
  measured: z.array(measurementSchema).max(4096).default([]),
});

/** The inks a person owns, with the stock on which their colours were read. */
export const shelfSchema = z
  .strictObject({
    format: z.literal('keyblock-shelf').default('keyblock-shelf'),
    version: z.literal(1).default(1),
    paper: stockSchema.default({ lab: [95, 0.5, -2], surface: 'uncoated' }),
    inks: z.array(inkSchema).max(500),
  })
  .meta({ title: 'Shelf of inks' });

export type Lab = z.infer<typeof labSchema>;
export type Ink = z.infer<typeof inkSchema>;
export type Stock = z.infer<typeof stockSchema>;
export type Measurement = z.infer<typeof measurementSchema>;
export type TakeUp = z.infer<typeof takeUpSchema>;
export type InkFile = z.infer<typeof inkFileSchema>;
export type Shelf = z.infer<typeof shelfSchema>;
export type Surface = z.infer<typeof surfaceSchema>;
