import { z } from 'zod';
import { complaintSchema } from './complaint.ts';
import { drawingSchema, pointMm } from './report.ts';

const speckSchema = z.strictObject({
  /** Left, top, right, bottom. */
  boxMm: z.tuple([z.number(), z.number(), z.number(), z.number()]),
  placeMm: pointMm,
  areaMm2: z.number(),
});

/** The marks that go as dust; at most 2000 of them one by one, the largest first. */
const specksSchema = z.strictObject({
  count: z.number().int(),
  areaMm2: z.number(),
  largest: z.array(speckSchema),
});

const openingSchema = z.strictObject({ widthMm: z.number(), placeMm: pointMm });

/** What `survey` says of a drawing. */
export const surveySchema = z
  .strictObject({
    version: z.literal(1),
    drawing: drawingSchema,
    line: z.strictObject({
      coveragePercent: z.number(),
      /** Widths along the line: its thinnest hundredth, tenth, half and nine tenths; null without line. */
      widthsMm: z
        .strictObject({ thinnest: z.number(), low: z.number(), middle: z.number(), high: z.number() })
        .nullable(),
    }),
    /** Null where Clean line is bypassed. */
    cleaning: z
      .strictObject({
        light: z.strictObject({ evened: z.boolean(), spreadPercent: z.number() }),
        threshold: z.strictObject({
          how: z.enum(['half', 'whole-drawing', 'local', 'set']),
          levelPercent: z.number(),
        }),
        /** Clockwise. */
        turnedDeg: z.number(),
        specks: specksSchema,
        pinholes: z.strictObject({ count: z.number().int(), areaMm2: z.number() }),
      })
      .nullable(),
    /** Openings in the line up to the gap, which are closed, and wider ones; null without Closed regions. */
    openings: z.strictObject({ closed: z.array(openingSchema), open: z.array(openingSchema) }).nullable(),
    complaints: z.array(complaintSchema),
  })
  .meta({ title: 'Survey of a drawing' });

export type Survey = z.infer<typeof surveySchema>;
