import { useEffect, useRef, useState } from 'react';
import { Cancelled, type ProgressReport, type TaskOptions } from '../../../workers/client.ts';
import { download } from './browser-files.ts';
import { files as texts } from './strings.ts';

/** A file that is made on demand. */
export interface Delivery {
  name: string;
  type: string;
  make(options: TaskOptions): Promise<Uint8Array<ArrayBuffer>>;
}

export interface DeliveryState {
  running: boolean;
  progress: ProgressReport | null;
  /** What became of the last one, as a sentence. */
  said: string | null;
  failed: boolean;
  start(delivery: Delivery): void;
  cancel(): void;
}

/** Makes one file at a time and hands it over; what still runs ends with the component. */
export function useDelivery(): DeliveryState {
  const current = useRef<AbortController | null>(null);
  const [running, setRunning] = useState(false);
  const [progress, setProgress] = useState<ProgressReport | null>(null);
  const [said, setSaid] = useState<{ text: string; failed: boolean } | null>(null);
  useEffect(() => () => current.current?.abort(), []);
  const start = async ({ name, type, make }: Delivery) => {
    const mine = new AbortController();
    current.current = mine;
    setRunning(true);
    setProgress(null);
    setSaid(null);
    try {
      download(name, await make({ onProgress: setProgress, signal: mine.signal }), type);
      setSaid({ text: texts.deliver.done(name), failed: false });
    } catch (error) {
      const ended = error instanceof Cancelled;
      setSaid({ text: ended ? texts.deliver.cancelled : (error as Error).message, failed: !ended });
    } finally {
      setRunning(false);
    }
  };
  return {
    running,
    progress,
    said: said?.text ?? null,
    failed: said?.failed ?? false,
    start: (delivery) => void start(delivery),
    cancel: () => current.current?.abort(),
  };
}
