import { availableParallelism } from 'node:os';
import { parentPort } from 'node:worker_threads';
import { type Endpoint, expose } from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs';

/** Makes an api callable from whoever started this worker. */
export function exposeHere(api: object): void {
  if (!parentPort) throw new Error('this runs in a worker only');
  expose(api, nodeEndpoint(parentPort) as Endpoint);
}

/** How many workers to start when nobody says: every core. */
export function usualWorkers(): number {
  return availableParallelism();
}

/** The most memory this process ever held, bytes. */
export function processPeakBytes(): number | null {
  return process.resourceUsage().maxRSS * 1024;
}
