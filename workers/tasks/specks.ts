import { BadInput } from '../../src/graph/complaint.ts';
import type { Job } from '../../src/graph/job.ts';
import type { Cleaning, Speck } from '../engine/cleaning.ts';
import type { DrawingValue } from '../engine/values.ts';
import { firstOf } from './job-ends.ts';
import { mm3 } from './report-parts.ts';
import type { TaskContext } from './task.ts';

/** The marks that Clean line takes for dust. */
export interface SpecksGone {
  count: number;
  areaMm2: number;
  /** The largest first, at most 2000. */
  largest: Speck[];
}

const NONE: SpecksGone = { count: 0, areaMm2: 0, largest: [] };

/**
 * What goes as dust, to show before it is gone. Only Clean line runs, and only when its result is not at hand.
 *
 * @throws BadInput when the job has no Clean line node
 */
export async function specks({ job }: { job: Job }, context: TaskContext): Promise<SpecksGone> {
  const { engine, flag, onProgress } = context;
  const node = firstOf(job, 'clean-line');
  if (!node) throw new BadInput('the job has no Clean line node');
  const targets = [{ node, port: 'drawing' }];
  const run = await engine.evaluate({ job, targets, scale: 1 }, flag, onProgress);
  const { cleaning } = run.values[0] as DrawingValue;
  run.release();
  return cleaning ? specksOf(cleaning.specks) : NONE;
}

/** Specks in whole micrometres. */
export function specksOf({ count, areaMm2, largest }: Cleaning['specks']): SpecksGone {
  return {
    count,
    areaMm2: mm3(areaMm2),
    largest: largest.map((speck) => ({
      boxMm: speck.boxMm.map(mm3) as Speck['boxMm'],
      placeMm: speck.placeMm.map(mm3) as Speck['placeMm'],
      areaMm2: Math.round(speck.areaMm2 * 1e6) / 1e6,
    })),
  };
}
