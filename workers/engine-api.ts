import type { CancelFlag } from './engine/cancel.ts';
import type { OnProgress } from './engine/progress.ts';
import type { Asset } from './engine/tools.ts';
import type { TaskInput, TaskName, TaskResult } from './tasks/index.ts';

/** What the engine's worker does for the rest of the house. */
export interface EngineApi {
  start(options: { workers: number | null; budgetBytes: number }): void;
  /** Takes in a file; returns the hash it goes by. */
  addAsset(asset: Asset): string;
  /** Drops every file but these. */
  keepAssets(hashes: readonly string[]): void;
  task<Name extends TaskName>(
    name: Name,
    input: TaskInput<Name>,
    flag: CancelFlag,
    onProgress: OnProgress,
  ): Promise<TaskResult<Name>>;
  /** Bytes: shared memory in use and at its peak, and the process's own peak where it can be told. */
  memory(): { liveBytes: number; peakBytes: number; processPeakBytes: number | null };
  close(): Promise<void>;
}
