import type { z } from 'zod';
import { BadInput } from './complaint.ts';
import { refuseDoubles } from './doubles.ts';
import { JOB_FORMAT, type Job, jobSchema } from './job.ts';
import { readJson } from './json-text.ts';
import { migrate, type RawJob } from './migrations.ts';
import type { NodeKinds } from './node-kind.ts';
import { checkGraph } from './wiring.ts';

/** Longest job text that is read: far above any real job, below what would exhaust memory. */
const MOST_CHARACTERS = 64 * 1024 * 1024;

/**
 * Reads the text of a job file: JSON, version, shape, node kinds, settings and wires.
 *
 * @param text the file's text
 * @param kinds the node kinds this Keyblock knows
 * @throws BadInput with one line that names the place and what to do
 */
export function parseJob(text: string, kinds: NodeKinds): Job {
  if (text.length > MOST_CHARACTERS) throw new BadInput('the job is larger than 64 MB; it is no job file');
  const raw = readJson(text, 'job');
  if (!isRecord(raw) || raw.format !== JOB_FORMAT)
    throw new BadInput(`this is no Keyblock job: it should begin with {"format":"${JOB_FORMAT}"`);
  const job = checkShape(jobSchema, migrate(raw));
  checkGraph(job.graph, kinds);
  for (const node of job.graph.nodes)
    checkShape(kinds.get(node.kind)!.settings, node.settings, `settings of "${node.id}"`);
  checkColourways(job);
  refuseDoubles('remembered regions', job.register.regions);
  return job;
}

/**
 * A value in the shape of `schema`, defaults filled in.
 * @param where names the value in the message
 * @throws BadInput naming the first field that does not fit
 */
export function checkShape<Schema extends z.ZodType>(
  schema: Schema,
  value: unknown,
  where = '',
): z.output<Schema> {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  const issue = result.error.issues[0]!;
  const path = [where, issue.path.join('.')].filter((part) => part !== '').join(', field ');
  throw new BadInput(`${path === '' ? 'the file' : path}: ${sentence(issue)}`);
}

function sentence(issue: z.core.$ZodIssue): string {
  if (issue.code === 'unrecognized_keys')
    return `unknown ${issue.keys.map((key) => `"${key}"`).join(', ')}; remove it, or open the file with a newer Keyblock`;
  return issue.message.replace(/\s+/g, ' ');
}

function checkColourways(job: Job): void {
  refuseDoubles('colourways', job.colourways);
  const ids = job.colourways.map((colourway) => colourway.id);
  if (!ids.includes(job.colourway))
    throw new BadInput(
      `the colourway in use, "${job.colourway}", is not in the job; it holds ${ids.join(', ')}`,
    );
}

function isRecord(value: unknown): value is RawJob {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}
