import type { SpawnedWorker } from '../spawned-worker.ts';
import { started } from './start.ts';

/** Starts a worker that computes pixels. */
export function spawnCrew(): SpawnedWorker {
  return started(new Worker(new URL('../../../crew-worker.ts', import.meta.url), { type: 'module' }));
}
