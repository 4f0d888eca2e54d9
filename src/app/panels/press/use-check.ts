import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { Cancelled } from '../../../../workers/client.ts';
import type { Complaint } from '../../../graph/complaint.ts';
import type { Job } from '../../../graph/job.ts';
import { useJob } from '../../../store/hooks.ts';
import { filesStore } from '../../files/files-store.ts';

/** What a check found, and whether it still holds. */
export interface Checked {
  faults: readonly Complaint[];
  stale: boolean;
}

export interface CheckState {
  /** Null before the first check. */
  checked: Checked | null;
  running: boolean;
  /** Why it could not be checked, as a sentence. */
  trouble: string | null;
  start(): void;
  cancel(): void;
}

/** Marks of what is meant change no plate. */
const samePrint = (a: Job, b: Job): boolean =>
  a.graph === b.graph && a.colourways === b.colourways && a.colourway === b.colourway && a.press === b.press;

/** Checks the open job for the press when it is asked to; a check under way ends with the component. */
export function useCheck(): CheckState {
  const client = useStore(filesStore, (state) => state.client);
  const job = useJob((each) => each);
  const [found, setFound] = useState<{ of: Job; faults: Complaint[] } | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [running, setRunning] = useState(false);
  const current = useRef<AbortController | null>(null);
  useEffect(() => () => current.current?.abort(), []);
  const start = async () => {
    if (!client) return;
    current.current?.abort();
    const mine = new AbortController();
    current.current = mine;
    setRunning(true);
    setTrouble(null);
    try {
      const { report } = await client.run('pressCheck', { job }, { signal: mine.signal });
      setFound({ of: job, faults: report.complaints.filter(({ severity }) => severity !== 'note') });
    } catch (error) {
      if (!(error instanceof Cancelled)) setTrouble((error as Error).message);
    } finally {
      if (current.current === mine) setRunning(false);
    }
  };
  return {
    checked: found && { faults: found.faults, stale: !samePrint(found.of, job) },
    running,
    trouble,
    start: () => void start(),
    cancel: () => current.current?.abort(),
  };
}
