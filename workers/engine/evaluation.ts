import type { z } from 'zod';
import type { Complaint } from '../../src/graph/complaint.ts';
import type { InputPorts, NodeKind, OutputPorts } from '../../src/graph/node-kind.ts';
import type { Colourway } from '../../src/graph/recipe.ts';
import type { LabelPlane, Plane } from '../kernels/plane.ts';
import type { AloneName, BandArgs, BandName, WholeArgs, WholeName, WholeResult } from './crew-api.ts';
import type { Value, ValueOf } from './values.ts';

/** The tools a step works with. Buffers it takes and does not give out are let go when it ends. */
export interface Tools {
  bytes(length: number): Uint8Array<SharedArrayBuffer>;
  plane(width: number, height: number): Plane;
  labels(width: number, height: number): LabelPlane;
  /** Lets a buffer go before the step ends. */
  free(view: ArrayBufferView<SharedArrayBuffer>): void;
  bands<Name extends BandName>(name: Name, args: BandArgs<Name>, extent: number): Promise<void>;
  whole<Name extends WholeName>(name: Name, args: WholeArgs<Name>): Promise<WholeResult<Name>>;
  /** On a worker of its own that ends with the job. Shared memory in the result must be adopted. */
  alone<Name extends AloneName>(
    name: Name,
    args: WholeArgs<Name>,
    limitMs: number,
  ): Promise<WholeResult<Name>>;
  /** Takes over shared memory that a job made, as if it came from `bytes`. */
  adopt(buffer: SharedArrayBuffer): void;
  /** Bytes of an asset, and the file name it came with. */
  asset(hash: string): { name: string; bytes: Uint8Array };
  complain(complaint: Complaint): void;
  /**
   * A part of the step's work that outlives a change of its other settings: made once for the same inputs and
   * `settings`, then kept like the result of a step. The step need not free it.
   */
  part<Part extends Value>(name: string, settings: unknown, make: () => Promise<Part>): Promise<Part>;
}

type InputValues<Inputs extends InputPorts> = {
  readonly [Port in keyof Inputs]: Inputs[Port] extends { optional: true }
    ? ValueOf<Inputs[Port]['type']> | undefined
    : ValueOf<Inputs[Port]['type']>;
};

type OutputValues<Outputs extends OutputPorts> = {
  readonly [Port in keyof Outputs]: ValueOf<Outputs[Port]['type']>;
};

/** One run of one node. */
export interface Work<Settings extends z.ZodObject, Inputs extends InputPorts> {
  settings: z.output<Settings>;
  inputs: InputValues<Inputs>;
  colourway: Colourway;
  /** Pixels of the full picture to one of this run, each way. */
  scale: number;
  tools: Tools;
}

/** The pixel side of a node kind. */
export interface Evaluation {
  kind: string;
  run(work: unknown): Promise<Readonly<Record<string, Value>>>;
}

/** Evaluations by kind. */
export type Evaluations = ReadonlyMap<string, Evaluation>;

/** Ties an evaluation to its declaration, so that settings and ports are typed by it. */
export function evaluation<
  Settings extends z.ZodObject,
  Inputs extends InputPorts,
  Outputs extends OutputPorts,
>(
  kind: NodeKind<Settings, Inputs, Outputs>,
  run: (work: Work<Settings, Inputs>) => Promise<OutputValues<Outputs>>,
): Evaluation {
  return { kind: kind.kind, run: (work) => run(work as Work<Settings, Inputs>) };
}
