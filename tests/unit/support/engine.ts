import type { Complaint } from '../../../src/graph/complaint.ts';
import type { Job } from '../../../src/graph/job.ts';
import type { PortType } from '../../../src/graph/ports.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { cancelFlag } from '../../../workers/engine/cancel.ts';
import { Engine } from '../../../workers/engine/engine.ts';
import type { ValueOf } from '../../../workers/engine/values.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { bytesOfLine, READY_LINE, withReadyLine } from './ready-line.ts';

/** An engine with its workers, to look at what comes out of single nodes. */
export class Bench {
  readonly engine: Engine;
  readonly #ready = new Set<string | null>();

  constructor(workers = 2, budgetBytes = 512 * 1024 * 1024) {
    const evaluations = withReadyLine((hash) => this.#ready.has(hash));
    this.engine = new Engine({ workers, budgetBytes, kinds: nodeKinds, evaluations });
  }

  /** Hands a file in; returns its hash. */
  asset(name: string, bytes: Uint8Array): string {
    return this.engine.addAsset({ name, bytes });
  }

  /** Hands line in as it is, no file to open; returns its hash. */
  drawing(line: Plane): string {
    const hash = this.asset(READY_LINE, bytesOfLine(line));
    this.#ready.add(hash);
    return hash;
  }

  /** The value of an output, written `node.port`; its planes stay until the engine is closed. */
  async value<Type extends PortType>(job: Job, end: string, type: Type, scale = 1): Promise<ValueOf<Type>> {
    return (await this.evaluate(job, end, type, scale)).value;
  }

  /** The value of an output, and what the nodes on the way had to say. */
  async evaluate<Type extends PortType>(
    job: Job,
    end: string,
    type: Type,
    scale = 1,
  ): Promise<{ value: ValueOf<Type>; complaints: Complaint[] }> {
    const [node, port] = end.split('.') as [string, string];
    const request = { job, targets: [{ node, port }], scale };
    const { values, complaints } = await this.engine.evaluate(request, cancelFlag(), () => {});
    const [value] = values;
    if (value?.type !== type) throw new Error(`${end} gives ${value?.type}, not ${type}`);
    return { value: value as ValueOf<Type>, complaints };
  }

  close(): Promise<void> {
    return this.engine.close();
  }
}
