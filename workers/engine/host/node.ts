import { availableParallelism } from 'node:os';
import { parentPort, Worker } from 'node:worker_threads';
import { type Endpoint, expose } from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs';
import type { Role, SpawnedWorker } from './spawned-worker.ts';

export type { SpawnedWorker } from './spawned-worker.ts';

const ENTRIES: Record<Role, URL> = {
  engine: new URL('../engine-worker.ts', import.meta.url),
  crew: new URL('../crew-worker.ts', import.meta.url),
};

/** Starts a worker thread. */
export function spawn(role: Role): SpawnedWorker {
  const worker = new Worker(new URL('./boot.mjs', import.meta.url), {
    workerData: { entry: ENTRIES[role].href },
  });
  const died = new Promise<string>((resolve) => {
    worker.once('error', (error) => resolve(error.message));
    worker.once('exit', (code) => resolve(`exit ${code}`));
  });
  return {
    endpoint: nodeEndpoint(worker),
    died,
    terminate: async () => {
      await worker.terminate();
    },
  };
}

/** Makes an api callable from whoever started this worker. */
export function exposeHere(api: object): void {
  if (!parentPort) throw new Error('this runs in a worker only');
  expose(api, nodeEndpoint(parentPort) as Endpoint);
}

/** The most memory this process ever held, bytes. */
export function processPeakBytes(): number | null {
  return process.resourceUsage().maxRSS * 1024;
}

/** How many workers to start when nobody says: every core. */
export function usualWorkers(): number {
  return availableParallelism();
}
