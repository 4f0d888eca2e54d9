import { type CancelFlag, Cancelled, isRaised, stopIfRaised } from './cancel.ts';
import type { AloneName, BandArgs, BandName, WholeArgs, WholeName, WholeResult } from './crew-api.ts';
import { Member, WorkerDied } from './member.ts';

/** Rows a worker takes at a time, and so between two looks at the cancel flag. */
const SLICE_ROWS = 64;
/** Kernels whose range is columns. */
const BY_COLUMNS: ReadonlySet<BandName> = new Set(['columnDistance', 'toChange']);
/** Columns a worker takes at a time: whole cache lines of every row. */
const SLICE_COLUMNS = 256;
/** How often a job that cannot look at the flag itself is asked whether it should end, ms. */
const LOOK_MS = 20;

/** The workers that compute pixels. A worker that dies is replaced, and its job is done again once. */
export class Crew {
  readonly #members: Member[];
  readonly #onReplaced: (message: string) => void;

  /**
   * @param size number of workers, at least 1
   * @param onReplaced hears a sentence for the person whenever a worker had to be replaced
   */
  constructor(size: number, onReplaced: (message: string) => void = () => {}) {
    this.#onReplaced = onReplaced;
    this.#members = Array.from({ length: size }, () => new Member());
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
    const slice = BY_COLUMNS.has(name) ? SLICE_COLUMNS : SLICE_ROWS;
    await this.#twice(flag, async () => {
      const ticket = new Int32Array(new SharedArrayBuffer(4));
      const helpers = this.#members.slice(0, Math.max(1, Math.ceil(extent / slice)));
      await settled(
        helpers.map((member) =>
          member.give((remote) => remote.bands(name, args, extent, slice, ticket, flag)),
        ),
      );
    });
  }

  /**
   * Runs a job on the worker with the least to do.
   *
   * @throws Cancelled
   */
  async whole<Name extends WholeName>(
    name: Name,
    args: WholeArgs<Name>,
    flag: CancelFlag,
  ): Promise<WholeResult<Name>> {
    return this.#twice(flag, () => {
      const member = this.#members.reduce((a, b) => (b.queue < a.queue ? b : a));
      return member.give((remote) => remote.whole(name, args) as Promise<WholeResult<Name>>);
    });
  }

  /**
   * Runs a job on a worker of its own that ends with it: for foreign files, which may hang, and whose decoders do
   * not give their memory back.
   *
   * @param limitMs time after which the job is ended
   * @throws Cancelled, TooSlow
   */
  async alone<Name extends AloneName>(
    name: Name,
    args: WholeArgs<Name>,
    flag: CancelFlag,
    limitMs: number,
  ): Promise<WholeResult<Name>> {
    stopIfRaised(flag);
    const member = new Member();
    const started = performance.now();
    let timer: ReturnType<typeof setInterval> | undefined;
    const ended = new Promise<never>((_, reject) => {
      timer = setInterval(() => {
        if (isRaised(flag)) reject(new Cancelled());
        if (performance.now() - started > limitMs) reject(new TooSlow(limitMs));
      }, LOOK_MS);
    });
    try {
      const job = member.give((remote) => remote.whole(name, args) as Promise<WholeResult<Name>>);
      return await Promise.race([job, ended]);
    } catch (error) {
      if (error instanceof WorkerDied) throw new OutOfReach();
      throw error;
    } finally {
      clearInterval(timer);
      await member.end();
    }
  }

  /** Ends all workers. */
  async close(): Promise<void> {
    await Promise.all(this.#members.map((member) => member.end()));
  }

  async #twice<Result>(flag: CancelFlag, attempt: () => Promise<Result>): Promise<Result> {
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
      throw new OutOfReach();
    }
  }

  async #attempt<Result>(flag: CancelFlag, attempt: () => Promise<Result>): Promise<Result> {
    stopIfRaised(flag);
    try {
      return await attempt();
    } finally {
      this.#replaceDead();
      stopIfRaised(flag);
    }
  }

  #replaceDead(): void {
    for (const [i, member] of this.#members.entries()) if (member.dead) this.#members[i] = new Member();
  }
}

/** A job took longer than any sound file needs. */
export class TooSlow extends Error {
  override readonly name = 'TooSlow';
  constructor(limitMs: number) {
    super(
      `opening it took longer than ${Math.round(limitMs / 1000)} s; it may be damaged: save it again, or smaller`,
    );
  }
}

/** Workers stop again and again at the same work. */
export class OutOfReach extends Error {
  override readonly name = 'OutOfReach';
  constructor() {
    super(
      'the workers stopped at this step, most likely for want of memory; close other programs, or use a smaller drawing',
    );
  }
}

/** Waits for all, then fails with the first failure: nothing still runs when this returns. */
async function settled(jobs: Promise<unknown>[]): Promise<void> {
  const results = await Promise.allSettled(jobs);
  const failed = results.find((result) => result.status === 'rejected');
  if (failed) throw failed.reason;
}
