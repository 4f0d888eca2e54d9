import type { SpawnedWorker } from '../spawned-worker.ts';
import { start } from './start.ts';

/** Starts the worker that plans and holds values. */
export function spawnEngine(): SpawnedWorker {
  return start(new URL('../../../engine-worker.ts', import.meta.url));
}
