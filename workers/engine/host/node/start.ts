import { Worker } from 'node:worker_threads';
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs';
import type { SpawnedWorker } from '../spawned-worker.ts';

/** Starts a worker thread on a TypeScript module. */
export function start(entry: URL): SpawnedWorker {
  const worker = new Worker(new URL('./boot.mjs', import.meta.url), { workerData: { entry: entry.href } });
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
