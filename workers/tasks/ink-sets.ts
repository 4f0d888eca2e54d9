import { BadInput } from '../../src/graph/complaint.ts';
import { findInkSets, type InkSetsInput, type RankedSets } from '../../src/ink/ink-sets.ts';
import { stopIfRaised } from '../engine/cancel.ts';
import type { TaskContext } from './task.ts';

/** Sets tried before the engine looks after other work: some 20 ms of sets of three. */
const AT_ONCE = 8;

/**
 * The inks of a shelf that reach some colours best, see `findInkSets`. Can be cancelled between sets.
 *
 * @throws BadInput that says what to change
 */
export async function inkSets(input: InkSetsInput, { flag, onProgress }: TaskContext): Promise<RankedSets> {
  const search = findInkSets(input);
  for (;;) {
    stopIfRaised(flag);
    const step = nextOf(search);
    if (step.done) return step.value;
    const { done, of } = step.value;
    if (done % AT_ONCE !== 0) continue;
    onProgress({ node: 'ink-sets', done, of });
    await new Promise((resolve) => setTimeout(resolve));
  }
}

function nextOf(search: ReturnType<typeof findInkSets>): ReturnType<typeof search.next> {
  try {
    return search.next();
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}
