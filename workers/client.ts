import { proxy, type Remote, wrap } from 'comlink';
import { spawnEngine } from '#host/spawn-engine';
import { Cancelled, cancelFlag, raise } from './engine/cancel.ts';
import type { OnProgress, ProgressReport } from './engine/progress.ts';
import type { Asset } from './engine/tools.ts';
import type { EngineApi } from './engine-api.ts';
import type { TaskInput, TaskName, TaskResult } from './tasks/index.ts';

export type { InkSetsInput, RankedSet, RankedSets } from '../src/ink/ink-sets.ts';
export { Cancelled } from './engine/cancel.ts';
export type { Speck } from './engine/cleaning.ts';
export type { OnProgress, ProgressReport } from './engine/progress.ts';
export type { Asset } from './engine/tools.ts';
export type { ClientPicture, ClientPictureInput } from './tasks/client-picture.ts';
export type { Ghost } from './tasks/ghost.ts';
export type { LineReport, LineReportInput } from './tasks/line-report.ts';
export type { Thumbnail } from './tasks/node-thumbnail.ts';
export type { NodeOverview, Overview, PlateOverview, PlateThumbnail } from './tasks/overview.ts';
export type { Picture, Show } from './tasks/picture.ts';
export type { MappedRegion, RegionMap } from './tasks/region-map.ts';
export type { RegisterSlack, RegisterSlackInput } from './tasks/register-slack.ts';
export { RENDER_FORMATS, type Rendered, type RenderFormat } from './tasks/render.ts';
export { SLACK_MARK, type SlackMap } from './tasks/slack-map.ts';
export type { SpecksGone } from './tasks/specks.ts';
export type { MadeFile } from './tasks/task.ts';
export type { ReportedTrap, TrapReport } from './tasks/trap-report.ts';

/** Shared memory for finished steps: enough for a 20 megapixel job in three inks with room to spare. */
const USUAL_BUDGET_BYTES = 768 * 1024 * 1024;

export interface ClientOptions {
  /** Workers that compute pixels; by default as many as the machine has cores to give. */
  workers?: number;
  /** Shared memory to keep finished steps in. */
  budgetBytes?: number;
}

export interface TaskOptions {
  onProgress?: OnProgress;
  /** Aborting it cancels the task: its promise rejects with Cancelled. */
  signal?: AbortSignal;
}

/** The engine, seen from the page or the command line. Everything it does happens in workers. */
export interface Client {
  /** Hands a file to the engine; returns the hash it goes by in jobs. */
  addAsset(asset: Asset): Promise<string>;
  /** Lets the engine drop every file but these. */
  keepAssets(hashes: readonly string[]): Promise<void>;
  /** Runs a task. Rejects with Cancelled, or with an error whose message is for the person. */
  run<Name extends TaskName>(
    name: Name,
    input: TaskInput<Name>,
    options?: TaskOptions,
  ): Promise<TaskResult<Name>>;
  memory(): Promise<ReturnType<EngineApi['memory']>>;
  /** Ends all workers; what still runs rejects. */
  close(): Promise<void>;
}

/** Starts the engine. */
export async function startEngine(options: ClientOptions = {}): Promise<Client> {
  const worker = spawnEngine();
  const remote: Remote<EngineApi> = wrap<EngineApi>(worker.endpoint);
  const death = worker.died.then((reason): never => {
    throw new Error(`the engine stopped (${reason}); open the job again`);
  });
  death.catch(() => {});
  const alive = <Result>(job: Promise<Result>): Promise<Result> => Promise.race([job, death]);
  const { workers = null, budgetBytes = USUAL_BUDGET_BYTES } = options;
  await alive(remote.start({ workers, budgetBytes }));

  const run = async <Name extends TaskName>(
    name: Name,
    input: TaskInput<Name>,
    { onProgress, signal }: TaskOptions = {},
  ): Promise<TaskResult<Name>> => {
    const flag = cancelFlag();
    const cancel = () => raise(flag);
    if (signal?.aborted) throw new Cancelled();
    signal?.addEventListener('abort', cancel);
    let settled = false;
    /** A report travels by another way than the result and may come after it. */
    const report = proxy((progress: ProgressReport) => {
      if (!settled && !signal?.aborted) onProgress?.(progress);
    });
    try {
      const task = remote.task as unknown as EngineApi['task'];
      const result = await alive(task(name, input, flag, report));
      if (signal?.aborted) throw new Cancelled();
      return result;
    } catch (error) {
      if (signal?.aborted) throw new Cancelled();
      throw error;
    } finally {
      settled = true;
      signal?.removeEventListener('abort', cancel);
    }
  };

  return {
    run,
    addAsset: (asset) => alive(remote.addAsset(asset)),
    keepAssets: (hashes) => alive(remote.keepAssets(hashes)),
    memory: () => alive(remote.memory()),
    close: async () => {
      await Promise.race([remote.close(), worker.died]);
      await worker.terminate();
    },
  };
}
