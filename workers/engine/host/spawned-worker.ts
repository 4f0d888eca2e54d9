import type { Endpoint } from 'comlink';

/** A worker of either platform. */
export interface SpawnedWorker {
  endpoint: Endpoint;
  /** Settles, with a reason, when the worker has stopped for whatever cause. */
  died: Promise<string>;
  terminate(): Promise<void>;
}
