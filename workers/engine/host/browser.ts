import { expose } from 'comlink';
import type { Role, SpawnedWorker } from './spawned-worker.ts';

export type { SpawnedWorker } from './spawned-worker.ts';

const START: Record<Role, () => Worker> = {
  engine: () => new Worker(new URL('../engine-worker.ts', import.meta.url), { type: 'module' }),
  crew: () => new Worker(new URL('../crew-worker.ts', import.meta.url), { type: 'module' }),
};

/** Starts a web worker. */
export function spawn(role: Role): SpawnedWorker {
  const worker = START[role]();
  let end: (reason: string) => void = () => {};
  const died = new Promise<string>((resolve) => {
    end = resolve;
  });
  worker.addEventListener('error', (event) => end(event.message || 'the worker could not start'));
  return {
    endpoint: worker,
    died,
    terminate: async () => {
      worker.terminate();
      end('ended');
    },
  };
}

/** Makes an api callable from whoever started this worker. */
export function exposeHere(api: object): void {
  expose(api);
}

/** A page cannot tell. */
export function processPeakBytes(): number | null {
  return null;
}

/** How many workers to start when nobody says: every core but one, which the page keeps. */
export function usualWorkers(): number {
  return Math.max(1, navigator.hardwareConcurrency - 1);
}
