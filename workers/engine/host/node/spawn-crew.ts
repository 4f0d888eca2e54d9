import type { SpawnedWorker } from '../spawned-worker.ts';
import { start } from './start.ts';

/** Starts a worker that computes pixels. */
export function spawnCrew(): SpawnedWorker {
  return start(new URL('../../../crew-worker.ts', import.meta.url));
}
