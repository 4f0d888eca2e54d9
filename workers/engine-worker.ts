import { transfer } from 'comlink';
import { exposeHere, processPeakBytes, usualWorkers } from '#host/here';
import { nodeKinds } from '../src/nodes/registry.ts';
import { Engine } from './engine/engine.ts';
import type { EngineApi } from './engine-api.ts';
import { evaluations } from './nodes/registry.ts';
import { type TaskInput, type TaskName, type TaskResult, tasks } from './tasks/index.ts';
import type { TaskContext } from './tasks/task.ts';

let started: Engine | null = null;

function engine(): Engine {
  if (!started) throw new Error('the engine was not started');
  return started;
}

/** Buffers of a result that go over to the page instead of being copied. */
function transferables(result: object): ArrayBuffer[] {
  const files = 'files' in result ? (result.files as { bytes: Uint8Array }[]).map((file) => file.bytes) : [];
  const views = Object.values(result).filter((field) => ArrayBuffer.isView(field));
  return [...files, ...views].map((view) => view.buffer).filter((buffer) => buffer instanceof ArrayBuffer);
}

const api: EngineApi = {
  start({ workers, budgetBytes }) {
    const size = workers ?? usualWorkers();
    started = new Engine({ workers: size, budgetBytes, kinds: nodeKinds, evaluations });
  },
  addAsset: (asset) => engine().addAsset(asset),
  keepAssets: (hashes) => engine().keepAssets(hashes),
  async task<Name extends TaskName>(
    name: Name,
    input: TaskInput<Name>,
    flag: TaskContext['flag'],
    onProgress: TaskContext['onProgress'],
  ) {
    const task = tasks[name] as unknown as (
      input: TaskInput<Name>,
      context: TaskContext,
    ) => Promise<TaskResult<Name>>;
    const result = await task(input, { engine: engine(), flag, onProgress });
    return transfer(result, transferables(result));
  },
  memory: () => {
    const { liveBytes, peakBytes } = engine().pool;
    return { liveBytes, peakBytes, processPeakBytes: processPeakBytes() };
  },
  close: () => engine().close(),
};

exposeHere(api);
