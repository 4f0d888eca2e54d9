import { createStore } from 'zustand/vanilla';
import { type Results, resultsStore } from '../store/results-store.ts';

/** Milliseconds that each node last took. Results only tell of what had to be computed anew, so they are kept here. */
export const timesStore = createStore<Readonly<Record<string, number>>>(() => ({}));

/** The node that is at work now, as progress tells. */
let working: { node: string; done: number; of: number; since: number } | null = null;

function close(now: number): void {
  if (working) timesStore.setState({ [working.node]: now - working.since });
  working = null;
}

/** Times a node from its own report of progress to the next of the same run, or to the run's result. */
function watch(state: Results, before: Results): void {
  const now = performance.now();
  const progress = state.running?.progress ?? null;
  if (progress && progress !== before.running?.progress) {
    if (working && progress.of === working.of && progress.done > working.done) close(now);
    working = { ...progress, since: now };
    return;
  }
  const came =
    state.picture !== before.picture ||
    state.regions !== before.regions ||
    state.overview !== before.overview;
  if (came) close(now);
  if (!state.running) working = null;
  if (state.overview && state.overview !== before.overview) timesStore.setState(state.overview.timings);
}

resultsStore.subscribe(watch);

/** A time as a ticket shows it; null below a twentieth of a second, which is no time to speak of. */
export function shownTime(ms: number | undefined): string | null {
  return ms === undefined || ms < 50 ? null : (ms / 1000).toFixed(1);
}
