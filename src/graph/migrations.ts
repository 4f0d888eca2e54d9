import { BadInput } from './complaint.ts';
import { JOB_VERSION } from './job.ts';

/** A document before its shape is checked. */
export type RawJob = Record<string, unknown>;

/** One step from a version to the next; gets a copy it may change, returns the newer document. */
export type Migration = (job: RawJob) => RawJob;

/** `MIGRATIONS[v]` lifts a document of version v to v + 1. Version 1 is the first there is. */
export const MIGRATIONS: Readonly<Record<number, Migration>> = {};

/**
 * Lifts a document to the newest version, step by step; the given document is left as it was.
 *
 * @throws BadInput when the version is no whole number, newer than this Keyblock, or too old for any step
 */
export function migrate(
  job: RawJob,
  steps: Readonly<Record<number, Migration>> = MIGRATIONS,
  newest: number = JOB_VERSION,
): RawJob {
  const version = job.version;
  if (typeof version !== 'number' || !Number.isInteger(version))
    throw new BadInput('the job has no version number; it is damaged or was not saved by Keyblock');
  if (version > newest)
    throw new BadInput(
      `the job was saved by a newer Keyblock (version ${version}, this one reads up to ${newest}); update Keyblock to open it`,
    );
  let lifted = structuredClone(job);
  for (let at = version; at < newest; at++) {
    const step = Object.hasOwn(steps, at) ? steps[at] : undefined;
    if (!step) throw new BadInput(`jobs of version ${at} cannot be opened; versions from 1 on can`);
    lifted = { ...step(lifted), version: at + 1 };
  }
  return lifted;
}
