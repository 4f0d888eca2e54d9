import { z } from 'zod';
import { batchSchema } from './batch.ts';
import { inkSetsSchema } from './ink-sets.ts';
import { inkFileSchema, shelfSchema } from './inks.ts';
import { jobSchema } from './job.ts';
import { matchesSchema } from './matches.ts';
import { predictionsSchema, recipesSchema } from './predictions.ts';
import { carrySchema } from './redraw.ts';
import { regionsFileSchema, reportSchema } from './report.ts';
import { styleSchema } from './style.ts';
import { surveySchema } from './survey.ts';

/** The shapes that files and other programs meet, by name. */
const PUBLISHED = {
  job: jobSchema,
  report: reportSchema,
  regions: regionsFileSchema,
  survey: surveySchema,
  matches: matchesSchema,
  style: styleSchema,
  batch: batchSchema,
  carry: carrySchema,
  inks: inkFileSchema,
  shelf: shelfSchema,
  recipes: recipesSchema,
  predictions: predictionsSchema,
  'ink-sets': inkSetsSchema,
} as const;

/** Each published shape as JSON Schema (draft 2020-12), by name. Describes files as written, before defaults. */
export function jsonSchemas(): Record<string, object> {
  return Object.fromEntries(
    Object.entries(PUBLISHED).map(([name, schema]) => [name, z.toJSONSchema(schema, { io: 'input' })]),
  );
}
