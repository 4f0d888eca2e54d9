import type { SpawnedWorker } from '../spawned-worker.ts';

/** What the house needs of a web worker that was just started. */
export function started(worker: Worker): SpawnedWorker {
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
