import type { z } from 'zod';
import type { InputPort, OutputPort } from './ports.ts';

export type InputPorts = Readonly<Record<string, InputPort>>;
export type OutputPorts = Readonly<Record<string, OutputPort>>;

/** Settings under a name, to begin from. */
export interface Preset {
  name: string;
  /** What it looks like, in a few words. */
  help: string;
  /** What differs from the usual. */
  settings: Readonly<Record<string, z.core.util.JSONType>>;
}

export interface Presets {
  /** What a preset decides, defaults and all; the rest stays as it is when one is chosen. */
  readonly shape: z.ZodObject;
  readonly list: readonly Preset[];
}

/** The declaration of a node kind: everything about it that is not pixels. */
export interface NodeKind<
  Settings extends z.ZodObject = z.ZodObject,
  Inputs extends InputPorts = InputPorts,
  Outputs extends OutputPorts = OutputPorts,
> {
  /** Stable name in job files. */
  readonly kind: string;
  /** Counts up whenever the same settings and inputs would give other results. */
  readonly version: number;
  readonly title: string;
  /** One line: what it does for the person. */
  readonly help: string;
  /** `artwork` belongs on the plates, `simulation` only in the proof, `source` and `delivery` frame them. */
  readonly role: 'source' | 'artwork' | 'simulation' | 'delivery';
  /** `structure` always runs at full resolution; `surface` follows the scale that is asked for. */
  readonly runs: 'structure' | 'surface';
  readonly inputs: Inputs;
  readonly outputs: Outputs;
  /** Strict schema; every field has a default, so that `{}` is a working node. */
  readonly settings: Settings;
  /** Settings of ours to begin from; a person keeps her own beside them. */
  readonly presets?: Presets;
  /** It reads the colourway in use, so its results change with it. */
  readonly readsColourway?: true;
  /** Its result depends on the ids the job gives to regions. */
  readonly namesRegions?: true;
}

/** All kinds by name. */
export type NodeKinds = ReadonlyMap<string, NodeKind>;

/** Declares a kind; the types of its settings and ports flow to its evaluation. */
export function defineNode<
  Settings extends z.ZodObject,
  const Inputs extends InputPorts,
  const Outputs extends OutputPorts,
>(kind: NodeKind<Settings, Inputs, Outputs>): NodeKind<Settings, Inputs, Outputs> {
  return kind;
}

/** Settings of a kind after its defaults are filled in. */
export type SettingsOf<Kind extends NodeKind> = z.output<Kind['settings']>;
