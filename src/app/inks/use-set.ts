import type { Client } from '../../../workers/client.ts';
import { deliveredInkSet, readInkSet } from '../../docket/ink-edits.ts';
import type { Ink } from '../../graph/inks.ts';
import type { GraphNode, Job } from '../../graph/job.ts';
import { freshId } from '../../store/edits.ts';
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

/**
 * Prints an ink in the place of one of the open job's, as one step: its plates keep their place and pass.
 *
 * @param recipes whether recipes are to look alike, or to keep their tints
 */
export async function swapInk(
  client: Client,
  old: string,
  ink: Ink,
  recipes: 'alike' | 'tints',
): Promise<void> {
  const before = jobStore.getState().job!;
  const set = readInkSet(deliveredInkSet(before.graph));
  if (!set) return;
  const id = freshId(ink.id, [...set.inks, ...set.plates]);
  const inks = set.inks.map((each) => (each.id === old ? { ...ink, id } : each));
  const plates = set.plates.map((plate) => ({
    ...plate,
    ink: plate.ink === old ? id : plate.ink,
    id: plate.id === old ? id : plate.id,
  }));
  const plain = JSON.parse(JSON.stringify({ inks, plates })) as GraphNode['settings'];
  const after = await client.run('swapInks', { job: before, set: plain, recipes });
  const name = set.inks.find((each) => each.id === old)!.name;
  edit(inkTexts.shelf.swapStep(ink.name, name), (job) => (job === before ? after : job));
}
