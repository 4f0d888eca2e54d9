import type { Client } from '../../../workers/client.ts';
import type { Ink } from '../../graph/inks.ts';
import type { GraphNode, Job } from '../../graph/job.ts';
import { edit, jobStore } from '../../store/job-store.ts';
import { inkTexts } from './strings.ts';

/** The job printed in a set of inks, one plate and one pass each, with recipes that look as near as can be. */
export function jobWithSet(client: Client, job: Job, inks: readonly Ink[]): Promise<Job> {
  const plates = inks.map(({ id }, i) => ({ id, ink: id, pass: i + 1 }));
  const set = JSON.parse(JSON.stringify({ inks, plates })) as GraphNode['settings'];
  return client.run('swapInks', { job, set, recipes: 'alike' });
}

/** Prints the open job in a set of inks, as one step. A job that was changed meanwhile is let be. */
export async function printWithSet(client: Client, inks: readonly Ink[]): Promise<void> {
  const before = jobStore.getState().job!;
  const after = await jobWithSet(client, before, inks);
  edit(inkTexts.sets.useStep, (job) => (job === before ? after : job));
}
