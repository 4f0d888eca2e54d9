import { type Remote, wrap } from 'comlink';
import { spawnCrew } from '#host/spawn-crew';
import type { CrewApi } from './crew-api.ts';
import type { SpawnedWorker } from './host/spawned-worker.ts';

/** A worker stopped while it worked. */
export class WorkerDied extends Error {}

interface Started {
  worker: SpawnedWorker;
  remote: Remote<CrewApi>;
  /** Rejects with WorkerDied when the worker stops. */
  death: Promise<never>;
}

/** One worker of the crew, seen from the engine. It starts with its first job. */
export class Member {
  /** Jobs it has not finished. */
  queue = 0;
  #dead = false;
  #started: Started | null = null;

  get dead(): boolean {
    return this.#dead;
  }

  /** Gives it a job. @throws WorkerDied when it stops before the job is done, which no message would tell */
  async give<Result>(job: (remote: Remote<CrewApi>) => Promise<Result>): Promise<Result> {
    this.#started ??= this.#start();
    const { remote, death } = this.#started;
    this.queue++;
    try {
      return await Promise.race([job(remote), death]);
    } finally {
      this.queue--;
    }
  }

  async end(): Promise<void> {
    await this.#started?.worker.terminate();
  }

  #start(): Started {
    const worker = spawnCrew();
    const death = worker.died.then((reason) => {
      this.#dead = true;
      throw new WorkerDied(reason);
    });
    death.catch(() => {});
    return { worker, remote: wrap<CrewApi>(worker.endpoint), death };
  }
}
