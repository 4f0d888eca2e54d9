import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { Cancelled, type TrapReport } from '../../../../workers/client.ts';
import { useJob } from '../../../store/hooks.ts';
import { filesStore } from '../../files/files-store.ts';

/** Fine enough for colours and places. */
const SCALE = 4;

/** What Trap makes of every border; null while it is worked out, a sentence when it cannot be. */
export function useTraps(wanted: boolean): TrapReport | string | null {
  const client = useStore(filesStore, (state) => state.client);
  const job = useJob((each) => each);
  const [traps, setTraps] = useState<TrapReport | string | null>(null);
  useEffect(() => {
    if (!client || !wanted) return;
    const stop = new AbortController();
    client.run('trapReport', { job, scale: SCALE }, { signal: stop.signal }).then(setTraps, (error) => {
      if (!(error instanceof Cancelled)) setTraps((error as Error).message);
    });
    return () => stop.abort();
  }, [client, job, wanted]);
  return wanted ? traps : null;
}
