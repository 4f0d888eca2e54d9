import { findInkSets, type InkSetsInput, type RankedSets } from '../../src/ink/ink-sets.ts';
import { runSearch } from './run-search.ts';
import type { TaskContext } from './task.ts';

/** Sets tried before the engine looks after other work: some 20 ms of sets of three. */
const AT_ONCE = 8;

/**
 * The inks of a shelf that reach some colours best, see `findInkSets`. Can be cancelled between sets.
 *
 * @throws BadInput that says what to change
 */
export function inkSets(input: InkSetsInput, context: TaskContext): Promise<RankedSets> {
  return runSearch('ink-sets', findInkSets(input), AT_ONCE, context);
}
