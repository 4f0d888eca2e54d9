import type { End, Job } from '../../src/graph/job.ts';
import { hashBytes } from '../../src/graph/keys.ts';
import type { NodeKinds } from '../../src/graph/node-kind.ts';
import type { Colourway } from '../../src/graph/recipe.ts';
import { StepCache } from './cache.ts';
import type { CancelFlag } from './cancel.ts';
import { Crew } from './crew.ts';
import type { Evaluations } from './evaluation.ts';
import { makePlan } from './plan.ts';
import { PlanePool } from './pool.ts';
import type { OnProgress } from './progress.ts';
import { type RunResult, runPlan } from './run-plan.ts';
import { type Asset, type ToolBox, toolBox } from './tools.ts';

export interface EngineOptions {
  /** Workers that compute pixels, at least 1. */
  workers: number;
  /** Shared memory to keep finished steps in. */
  budgetBytes: number;
  /** Every node kind, and how each is evaluated. */
  kinds: NodeKinds;
  evaluations: Evaluations;
}

export interface EvaluateRequest {
  job: Job;
  targets: readonly End[];
  /** 1 for full, n for a preview of 1/n. */
  scale: number;
}

/** Plans, runs and remembers. Holds every plane; tasks and pages only borrow. */
export class Engine {
  readonly pool = new PlanePool();
  readonly #cache: StepCache;
  readonly #crew: Crew;
  readonly #assets = new Map<string, Asset>();
  readonly #messages: string[] = [];
  readonly #kinds: NodeKinds;
  readonly #evaluations: Evaluations;

  constructor(options: EngineOptions) {
    this.#kinds = options.kinds;
    this.#evaluations = options.evaluations;
    this.#cache = new StepCache(this.pool, options.budgetBytes);
    this.#crew = new Crew(options.workers, (message) => this.#messages.push(message));
  }

  /** Takes in a file; returns the name it goes by. */
  addAsset(asset: Asset): string {
    const hash = hashBytes(asset.bytes);
    this.#assets.set(hash, asset);
    return hash;
  }

  /** Drops every file but these. */
  keepAssets(hashes: readonly string[]): void {
    const kept = new Set(hashes);
    for (const hash of [...this.#assets.keys()]) if (!kept.has(hash)) this.#assets.delete(hash);
  }

  /**
   * The values of the wanted outputs; release them when done.
   *
   * @throws BadInput, Cancelled
   */
  async evaluate(request: EvaluateRequest, flag: CancelFlag, onProgress: OnProgress): Promise<RunResult> {
    const colourway = colourwayInUse(request.job);
    const plan = makePlan({ ...request, kinds: this.#kinds, colourway });
    const result = await runPlan(plan, {
      pool: this.pool,
      cache: this.#cache,
      crew: this.#crew,
      assets: this.#assets,
      evaluations: this.#evaluations,
      flag,
      colourway,
      register: request.job.register,
      onProgress,
    });
    const notes = this.#messages.splice(0).map((message) => ({
      code: 'worker-replaced',
      severity: 'note' as const,
      message,
    }));
    return { ...result, complaints: [...result.complaints, ...notes] };
  }

  /** Tools for a task beside the nodes; `tidy` when it ends. */
  toolBox(flag: CancelFlag): ToolBox {
    return toolBox(this.pool, this.#crew, this.#assets, flag);
  }

  async close(): Promise<void> {
    await this.#crew.close();
  }
}

/** The colourway a job shows. A parsed job always has it. */
export function colourwayInUse(job: Job): Colourway {
  return job.colourways.find((colourway) => colourway.id === job.colourway)!;
}
