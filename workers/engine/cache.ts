import type { Complaint } from '../../src/graph/complaint.ts';
import type { PlanePool } from './pool.ts';
import { buffersOf, type Value } from './values.ts';

/** The outputs of a step by port. */
export type Outputs = Readonly<Record<string, Value>>;

/** What is remembered of a step: what it had to say and how long it took. */
export interface StepMemory {
  complaints: readonly Complaint[];
  ms: number;
}

/** Distinct buffers under all outputs. */
function buffersUnder(outputs: Outputs): Set<SharedArrayBuffer> {
  return new Set(Object.values(outputs).flatMap(buffersOf));
}

/** Adds a holder to every buffer under the outputs. */
export function retainOutputs(pool: PlanePool, outputs: Outputs): void {
  for (const buffer of buffersUnder(outputs)) pool.retain(buffer);
}

export function releaseOutputs(pool: PlanePool, outputs: Outputs): void {
  for (const buffer of buffersUnder(outputs)) pool.release(buffer);
}

/** Finished steps by content key; the least recently used go when shared memory passes the budget. */
export class StepCache {
  readonly #outputs = new Map<string, Outputs>();
  /** Kept when outputs go: small, and still wanted when only what stands downstream is asked for. */
  readonly #memories = new Map<string, StepMemory>();
  readonly #pool: PlanePool;
  readonly #budgetBytes: number;

  constructor(pool: PlanePool, budgetBytes: number) {
    this.#pool = pool;
    this.#budgetBytes = budgetBytes;
  }

  has(key: string): boolean {
    return this.#outputs.has(key);
  }

  /** The outputs, now the most recently used. */
  get(key: string): Outputs | undefined {
    const outputs = this.#outputs.get(key);
    if (!outputs) return undefined;
    this.#outputs.delete(key);
    this.#outputs.set(key, outputs);
    return outputs;
  }

  /** What is remembered of the step; nothing when it never ran. */
  memory(key: string): StepMemory | undefined {
    return this.#memories.get(key);
  }

  put(key: string, outputs: Outputs, memory: StepMemory): void {
    this.#memories.set(key, memory);
    if (this.#outputs.has(key)) return;
    retainOutputs(this.#pool, outputs);
    this.#outputs.set(key, outputs);
    this.trim();
  }

  /** Lets go of old outputs until the budget holds or none is left. */
  trim(): void {
    for (const [key, outputs] of this.#outputs) {
      if (this.#pool.liveBytes <= this.#budgetBytes) return;
      this.#outputs.delete(key);
      releaseOutputs(this.#pool, outputs);
    }
  }
}
