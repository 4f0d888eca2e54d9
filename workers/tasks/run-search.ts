import { BadInput } from '../../src/graph/complaint.ts';
import { stopIfRaised } from '../engine/cancel.ts';
import type { TaskContext } from './task.ts';

interface Step {
  done: number;
  of: number;
}

/**
 * Runs a search that tells after each step how far it is. Can be cancelled between steps.
 *
 * @param every steps taken before progress is told and the engine looks after other work
 * @throws BadInput for the RangeError of a search that cannot be
 */
export async function runSearch<Found>(
  node: string,
  search: Iterator<Step, Found>,
  every: number,
  { flag, onProgress }: TaskContext,
): Promise<Found> {
  for (;;) {
    stopIfRaised(flag);
    const step = nextOf(search);
    if (step.done) return step.value;
    const { done, of } = step.value;
    if (done % every !== 0) continue;
    onProgress({ node, done, of });
    await new Promise((resolve) => setTimeout(resolve));
  }
}

function nextOf<Found>(search: Iterator<Step, Found>): IteratorResult<Step, Found> {
  try {
    return search.next();
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}
