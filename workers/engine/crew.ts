import { type Remote, wrap } from 'comlink';
import { spawnCrew } from '#host/spawn-crew';
import type { SpawnedWorker } from './host/spawned-worker.ts';
import { type CancelFlag, Cancelled, isRaised, stopIfRaised } from './cancel.ts';
import type { BandArgs, BandName, CrewApi, WholeArgs, WholeName, WholeResult } from './crew-api.ts';

/** Rows a worker takes at a time, and so between two looks at the cancel flag. */
const SLICE_ROWS = 64;
/** Columns a worker takes at a time: whole cache lines of every row. */
const SLICE_COLUMNS = 256;

/** A worker stopped while it worked. */
class WorkerDied extends Error {}

interface Member {
  worker: SpawnedWorker;
  remote: Remote<CrewApi>;
  /** Jobs it has not finished. */
  queue: number;
  /** Rejects with WorkerDied when the worker stops. */
  death: Promise<never>;
}

/** The workers that compute pixels. A worker that dies is replaced, and its job is done again once. */
export class Crew {
  readonly #members: Member[] = [];
  readonly #onReplaced: (message: string) => void;

  /**
   * @param size number of workers, at least 1
   * @param onReplaced hears a sentence for the person whenever a worker had to be replaced
   */
  constructor(size: number, onReplaced: (message: string) => void = () => {}) {
    this.#onReplaced = onReplaced;
    for (let i = 0; i < size; i++) this.#members.push(enlist());
  }

  /**
   * Runs a kernel over `extent` rows, or columns where the kernel goes by columns, split among all workers.
   *
   * @throws Cancelled
   */
  async bands<Name extends BandName>(
    name: Name,
    args: BandArgs<Name>,
    extent: number,
    flag: CancelFlag,
  ): Promise<void> {
    const slice = name === 'columnDistance' ? SLICE_COLUMNS : SLICE_ROWS;
    await this.#twice(flag, async () => {
      const ticket = new Int32Array(new SharedArrayBuffer(4));
      const helpers = this.#members.slice(0, Math.max(1, Math.ceil(extent / slice)));
      const shares = helpers.map((member) =>
        this.#give(member, () => member.remote.bands(name, args, extent, slice, ticket, flag)),
      );
      await settled(shares);
    });
  }

  /**
   * Runs a job on the worker with the least to do.
   *
   * @param limitMs time after which the worker is ended and the job fails; none when left out
   * @throws Cancelled
   */
  async whole<Name extends WholeName>(
    name: Name,
    args: WholeArgs<Name>,
    flag: CancelFlag,
    limitMs?: number,
  ): Promise<WholeResult<Name>> {
    return this.#twice(flag, () => {
      const member = this.#members.reduce((a, b) => (b.queue < a.queue ? b : a));
      const job = () => member.remote.whole(name, args) as Promise<WholeResult<Name>>;
      return this.#give(
        member,
        limitMs === undefined ? job : () => this.#limited(member, job, name, limitMs),
      );
    });
  }

  /** Ends all workers. */
  async close(): Promise<void> {
    await Promise.all(this.#members.map((member) => member.worker.terminate()));
  }

  async #give<Result>(member: Member, job: () => Promise<Result>): Promise<Result> {
    member.queue++;
    try {
      return await Promise.race([job(), member.death]);
    } finally {
      member.queue--;
    }
  }

  async #limited<Result>(
    member: Member,
    job: () => Promise<Result>,
    name: string,
    limitMs: number,
  ): Promise<Result> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<never>((_, reject) => {
      timer = setTimeout(() => reject(new TooSlow(name, limitMs)), limitMs);
    });
    try {
      return await Promise.race([job(), late]);
    } catch (error) {
      if (error instanceof TooSlow) this.#replace(member);
      throw error;
    } finally {
      clearTimeout(timer);
    }
  }

  async #twice<Result>(flag: CancelFlag, attempt: () => Promise<Result>): Promise<Result> {
    stopIfRaised(flag);
    try {
      return await this.#attempt(flag, attempt);
    } catch (error) {
      if (!(error instanceof WorkerDied)) throw error;
    }
    this.#onReplaced('A worker stopped and was replaced; its work is done again.');
    try {
      return await this.#attempt(flag, attempt);
    } catch (error) {
      if (!(error instanceof WorkerDied)) throw error;
      throw new Error(
        'a worker stopped twice at the same step; there may be too little memory for this drawing',
      );
    }
  }

  async #attempt<Result>(flag: CancelFlag, attempt: () => Promise<Result>): Promise<Result> {
    try {
      const result = await attempt();
      stopIfRaised(flag);
      return result;
    } catch (error) {
      if (isRaised(flag)) throw new Cancelled();
      throw error;
    } finally {
      await this.#replaceDead();
    }
  }

  async #replaceDead(): Promise<void> {
    for (const member of [...this.#members]) {
      const alive = await Promise.race([member.death.catch(() => false), Promise.resolve(true)]);
      if (!alive) this.#replace(member);
    }
  }

  #replace(member: Member): void {
    const at = this.#members.indexOf(member);
    if (at < 0) return;
    void member.worker.terminate();
    this.#members[at] = enlist();
  }
}

/** A job took longer than any sound file needs. */
export class TooSlow extends Error {
  override readonly name = 'TooSlow';
  constructor(job: string, limitMs: number) {
    super(`${job} took longer than ${Math.round(limitMs / 1000)} s`);
  }
}

function enlist(): Member {
  const worker = spawnCrew();
  const death = worker.died.then((reason) => {
    throw new WorkerDied(reason);
  });
  death.catch(() => {});
  return { worker, remote: wrap<CrewApi>(worker.endpoint), queue: 0, death };
}

/** Waits for all, then fails with the first failure: nothing still runs when this returns. */
async function settled(jobs: Promise<unknown>[]): Promise<void> {
  const results = await Promise.allSettled(jobs);
  const failed = results.find((result) => result.status === 'rejected');
  if (failed) throw failed.reason;
}
