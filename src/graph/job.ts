import { z } from 'zod';
import { meantSchema } from './complaint.ts';
import { idSchema } from './inks.ts';
import { keptListSchema } from './kept-settings.ts';
import { pressSchema } from './press.ts';
import { colourwaySchema } from './recipe.ts';
import { redrawSchema } from './redraw.ts';
import { regionGroupSchema } from './region-edits.ts';
import { registerSchema } from './register.ts';

export const JOB_FORMAT = 'keyblock-job';
export const JOB_VERSION = 1;

export const endSchema = z.strictObject({ node: idSchema, port: z.string().min(1).max(40) });

export const wireSchema = z.strictObject({ from: endSchema, to: endSchema });

export const nodeSchema = z.strictObject({
  id: idSchema,
  kind: z.string().min(1).max(40),
  settings: z.record(z.string(), z.json()).default({}),
  /** A bypassed node hands its input on unchanged. */
  bypassed: z.boolean().default(false),
});

export const graphSchema = z.strictObject({
  nodes: z.array(nodeSchema).max(500),
  wires: z.array(wireSchema).max(2000),
});

/** SHA-256 of an asset's bytes, in hex. */
export const hashSchema = z.string().regex(/^[0-9a-f]{64}$/, 'an asset is named by its SHA-256 in hex');

export const assetSchema = z.strictObject({
  /** File name inside the folder `assets` beside the job. */
  file: z
    .string()
    .min(1)
    .max(120)
    .regex(/^[^/\\:*?"<>|]+$/, 'a plain file name, no folders')
    .refine((name) => !name.startsWith('.'), 'a plain file name, no folders'),
});

/** One drawing with its graph, inks and colourways: the whole document, plain JSON. */
export const jobSchema = z
  .strictObject({
    format: z.literal(JOB_FORMAT),
    version: z.literal(JOB_VERSION),
    name: z.string().min(1).max(120),
    graph: graphSchema,
    colourways: z.array(colourwaySchema).min(1).max(100),
    /** Id of the colourway in use. */
    colourway: idSchema,
    register: registerSchema,
    /** Regions by name, whatever they print. */
    groups: z.array(regionGroupSchema).max(1000).default([]),
    /** The press it prints on, as far as that is known. */
    press: pressSchema.nullable().default(null),
    /** Faults of the press check that are meant. */
    meant: z.array(meantSchema).max(10_000).default([]),
    /** Regions whose recipes no proposal changes. */
    pins: z.array(idSchema).max(100_000).default([]),
    /** What the last change of the drawing carried over; null where there was none or it was put away. */
    redraw: redrawSchema.nullable().default(null),
    assets: z.record(hashSchema, assetSchema).default({}),
    /** Settings that the person kept, to use again. */
    kept: keptListSchema.optional(),
  })
  .meta({ title: 'Keyblock job' });

export type End = z.infer<typeof endSchema>;
export type Wire = z.infer<typeof wireSchema>;
export type GraphNode = z.infer<typeof nodeSchema>;
export type Graph = z.infer<typeof graphSchema>;
export type Job = z.infer<typeof jobSchema>;
