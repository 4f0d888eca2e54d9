import { useEffect, useState } from 'react';
import { Cancelled, type Client, type Picture } from '../../../workers/client.ts';
import type { Job } from '../../graph/job.ts';

/** A proof of a job at 1/`scale`, null until it came. A newer job ends the run for the one before. */
export function useProof(client: Client, job: Job, scale: number): Picture | null {
  const [picture, setPicture] = useState<Picture | null>(null);
  useEffect(() => {
    const stop = new AbortController();
    client
      .run('picture', { job, show: { view: 'proof' }, scale }, { signal: stop.signal })
      .then(setPicture, (error) => {
        if (!(error instanceof Cancelled)) setPicture(null);
      });
    return () => stop.abort();
  }, [client, job, scale]);
  return picture;
}
