import type { Endpoint } from 'comlink';

/** `engine` plans and holds values, `crew` computes pixels. */
export type Role = 'engine' | 'crew';

export interface SpawnedWorker {
  endpoint: Endpoint;
  /** Settles, with a reason, when the worker has stopped for whatever cause. */
  died: Promise<string>;
  terminate(): Promise<void>;
}
