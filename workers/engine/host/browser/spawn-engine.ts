import type { SpawnedWorker } from '../spawned-worker.ts';
import { started } from './start.ts';

/** Starts the worker that plans and holds values. */
export function spawnEngine(): SpawnedWorker {
  return started(new Worker(new URL('../../../engine-worker.ts', import.meta.url), { type: 'module' }));
}
