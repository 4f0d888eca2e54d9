import type { Job } from '../../graph/job.ts';

/** Whether a file holds all that the person did: remembered regions do not count. */
export function isSaved(job: Job | null, saved: Job | null): boolean {
  if (!job || !saved) return false;
  const keys = Object.keys(job) as (keyof Job)[];
  return keys.every((key) => key === 'register' || job[key] === saved[key]);
}
