import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { Cancelled } from '../../../../workers/client.ts';
import type { Matches } from '../../../graph/matches.ts';
import { useJob } from '../../../store/hooks.ts';
import { filesStore } from '../../files/files-store.ts';

/** So many other recipes are named for each region. */
const OTHERS = 3;

/** What each region wants by the rough; null while it is worked out, a sentence when it cannot be. */
export function useMatches(wanted: boolean): Matches | string | null {
  const client = useStore(filesStore, (state) => state.client);
  const job = useJob((each) => each);
  const [matches, setMatches] = useState<Matches | string | null>(null);
  const { graph } = job;
  // biome-ignore lint/correctness/useExhaustiveDependencies: recipes do not change what a rough wants
  useEffect(() => {
    if (!client || !wanted) return;
    const stop = new AbortController();
    client.run('match', { job, alternatives: OTHERS }, { signal: stop.signal }).then(setMatches, (error) => {
      if (!(error instanceof Cancelled)) setMatches((error as Error).message);
    });
    return () => stop.abort();
  }, [client, graph, wanted]);
  return wanted ? matches : null;
}
