import { type Remote, wrap } from 'comlink';
import { spawnCrew } from '#host/spawn-crew';
import type { CrewApi } from './crew-api.ts';

/** A worker stopped while it worked. */
export class WorkerDied extends Error {}

/** One worker of the crew, seen from the engine. */
export class Member {
  /** Jobs it has not finished. */
  queue = 0;
  #dead = false;
  readonly #worker = spawnCrew();
  readonly #remote: Remote<CrewApi> = wrap<CrewApi>(this.#worker.endpoint);
  readonly #death: Promise<never>;

  constructor() {
    this.#death = this.#worker.died.then((reason) => {
      this.#dead = true;
      throw new WorkerDied(reason);
    });
    this.#death.catch(() => {});
  }

  get dead(): boolean {
    return this.#dead;
  }

  /** Gives it a job. @throws WorkerDied when it stops before the job is done, which no message would tell */
  async give<Result>(job: (remote: Remote<CrewApi>) => Promise<Result>): Promise<Result> {
    this.queue++;
    try {
      return await Promise.race([job(this.#remote), this.#death]);
    } finally {
      this.queue--;
    }
  }

  end(): Promise<void> {
    return this.#worker.terminate();
  }
}
