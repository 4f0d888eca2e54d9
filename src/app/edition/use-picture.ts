import { useEffect, useRef, useState } from 'react';
import { Cancelled, type ProgressReport, type TaskOptions } from '../../../workers/client.ts';

/** A PNG that was asked for. */
export interface PictureState {
  /** Address of the picture for the page; null before one came. */
  url: string | null;
  bytes: Uint8Array<ArrayBuffer> | null;
  running: boolean;
  progress: ProgressReport | null;
  /** Why the last one could not be made, as a sentence. */
  failure: string | null;
  make(run: (options: TaskOptions) => Promise<Uint8Array>): void;
  cancel(): void;
  clear(): void;
}

/** Makes one picture at a time to be shown; a newer one ends the one before, and what runs ends with the component. */
export function usePicture(): PictureState {
  const current = useRef<AbortController | null>(null);
  const [bytes, setBytes] = useState<Uint8Array<ArrayBuffer> | null>(null);
  const [url, setUrl] = useState<string | null>(null);
  const [running, setRunning] = useState(false);
  const [progress, setProgress] = useState<ProgressReport | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  useEffect(() => () => current.current?.abort(), []);
  useEffect(() => {
    if (!bytes) {
      setUrl(null);
      return;
    }
    const made = URL.createObjectURL(new Blob([bytes], { type: 'image/png' }));
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [bytes]);
  const make = async (run: (options: TaskOptions) => Promise<Uint8Array>) => {
    current.current?.abort();
    const mine = new AbortController();
    current.current = mine;
    setRunning(true);
    setProgress(null);
    setFailure(null);
    try {
      const made = await run({ onProgress: setProgress, signal: mine.signal });
      if (current.current === mine) setBytes(new Uint8Array(made));
    } catch (error) {
      if (!(error instanceof Cancelled) && current.current === mine) setFailure((error as Error).message);
    } finally {
      if (current.current === mine) setRunning(false);
    }
  };
  return {
    url,
    bytes,
    running,
    progress,
    failure,
    make: (run) => void make(run),
    cancel: () => current.current?.abort(),
    clear: () => setBytes(null),
  };
}
