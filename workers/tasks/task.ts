import type { CancelFlag } from '../engine/cancel.ts';
import type { Engine } from '../engine/engine.ts';
import type { OnProgress } from '../engine/progress.ts';

/** What a task works with. */
export interface TaskContext {
  engine: Engine;
  flag: CancelFlag;
  onProgress: OnProgress;
}

/** A file that a task made, not yet written anywhere. */
export interface MadeFile {
  name: string;
  bytes: Uint8Array;
}
