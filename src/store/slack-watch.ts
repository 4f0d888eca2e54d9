import { Cancelled, type Client } from '../../workers/client.ts';
import type { Job } from '../graph/job.ts';
import { jobStore } from './job-store.ts';
import { slackStore } from './slack-store.ts';

/** A change of the document is followed once nothing more comes for so long, ms. */
const REST_MS = 400;

/** Whether two documents print alike as far as register slack goes. */
function alike(one: Job | null, other: Job | null): boolean {
  return (['graph', 'colourways', 'colourway', 'press'] as const).every(
    (part) => one?.[part] === other?.[part],
  );
}

/** Keeps the register slack up to date with the document, until the returned function is called. */
export function watchSlack(client: Client): () => void {
  let stop = new AbortController();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const again = () => {
    stop.abort();
    clearTimeout(timer);
    slackStore.setState({ slack: null });
    const mine = new AbortController();
    stop = mine;
    timer = setTimeout(() => void run(mine.signal), REST_MS);
  };
  const run = async (signal: AbortSignal) => {
    const { job } = jobStore.getState();
    if (!job) return;
    try {
      const slack = await client.run('registerSlack', { job }, { signal });
      slackStore.setState({ slack });
    } catch (error) {
      if (!(error instanceof Cancelled)) slackStore.setState({ slack: (error as Error).message });
    }
  };
  const leave = jobStore.subscribe((state, before) => {
    if (!alike(state.job, before.job)) again();
  });
  again();
  return () => {
    leave();
    stop.abort();
    clearTimeout(timer);
    slackStore.setState({ slack: null });
  };
}
