import { z } from 'zod';

/** What became of one drawing of a batch. */
export const batchItemSchema = z.strictObject({
  drawing: z.string(),
  /** Folder with its plates, proof, report and job; null where nothing was made. */
  folder: z.string().nullable(),
  /** Hash of style, drawing and rough: an item made of the same is not made again. */
  madeFrom: z.string(),
  state: z.enum(['done', 'faults', 'failed']),
  /** Why it failed. */
  message: z.string().nullable(),
  regions: z.number().int(),
  complaints: z.number().int(),
  plates: z.array(z.strictObject({ id: z.string(), coveragePercent: z.number() })),
});

/** What `batch` writes beside its folders. */
export const batchSchema = z
  .strictObject({ version: z.literal(1), style: z.string(), items: z.array(batchItemSchema) })
  .meta({ title: 'Batch of drawings in a house style' });

export type BatchItem = z.infer<typeof batchItemSchema>;
export type Batch = z.infer<typeof batchSchema>;
