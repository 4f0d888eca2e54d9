import { BadInput } from '../graph/complaint.ts';
import type { Job } from '../graph/job.ts';

/** The job with another colourway in use, by id or name. @throws BadInput when there is none */
export function inColourway(job: Job, wanted: string | undefined): Job {
  if (wanted === undefined) return job;
  const found = job.colourways.find(({ id, name }) => id === wanted || name === wanted);
  if (!found) {
    const names = job.colourways.map(({ name }) => `"${name}"`).join(', ');
    throw new BadInput(`there is no colourway "${wanted}"; the job holds ${names}`);
  }
  return { ...job, colourway: found.id };
}
