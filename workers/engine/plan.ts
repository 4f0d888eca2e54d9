import { BadInput } from '../../src/graph/complaint.ts';
import type { End, GraphNode, Job } from '../../src/graph/job.ts';
import { contentKey } from '../../src/graph/keys.ts';
import type { NodeKind, NodeKinds } from '../../src/graph/node-kind.ts';
import { wireInto } from '../../src/graph/order.ts';
import { checkShape } from '../../src/graph/parse-job.ts';
import type { PortType } from '../../src/graph/ports.ts';
import type { Colourway } from '../../src/graph/recipe.ts';
import { bypassInput, missingInputs } from '../../src/graph/wiring.ts';

/** One output of one step. */
export interface Source {
  key: string;
  port: string;
}

interface StepBase {
  /** Equal keys stand for equal results. */
  key: string;
  inputs: Readonly<Record<string, Source>>;
}

/** One node of the graph at one scale. */
export interface NodeStep extends StepBase {
  does: 'node';
  node: string;
  kind: NodeKind;
  settings: unknown;
  /** Pixels of the full picture to one of this step, each way. */
  scale: number;
}

/** Gives the regions that come in by `from` their ids. */
export interface NameStep extends StepBase {
  does: 'name-regions';
}

/** Brings a structure value down to the scale of the surface steps. */
export interface ReduceStep extends StepBase {
  does: 'reduce';
  scale: number;
}

export type Step = NodeStep | NameStep | ReduceStep;

export interface Plan {
  /** Every step after all that feed it. */
  steps: Step[];
  /** Where the wanted outputs come out, in the order they were asked for. */
  targets: Source[];
}

export interface PlanRequest {
  job: Pick<Job, 'graph' | 'register'>;
  kinds: NodeKinds;
  colourway: Colourway;
  /** Outputs that are wanted. */
  targets: readonly End[];
  /** 1 for full, n for a preview of 1/n. */
  scale: number;
}

/** The two value types that structure nodes hand to surface nodes at a reduced scale. */
const REDUCIBLE: ReadonlySet<PortType> = new Set(['drawing', 'regions']);

/**
 * The steps that lead to the wanted outputs, with their content keys. Structure runs at full resolution whatever
 * the scale; what it gives is reduced on its way to surface nodes.
 *
 * @throws BadInput when an input on the way has no wire or a setting does not fit
 */
export function makePlan(request: PlanRequest): Plan {
  const { graph, register } = request.job;
  const steps = new Map<string, Step>();
  const nodes = new Map(graph.nodes.map((node) => [node.id, node]));

  const add = (step: Step, port: string): Source => {
    if (!steps.has(step.key)) steps.set(step.key, step);
    return { key: step.key, port };
  };

  const found = new Map<string, Source>();

  /** Each output once, though many wires may lead to it. */
  const sourceOf = (end: End, scale: number): Source => {
    const at = JSON.stringify([end.node, end.port, scale]);
    const source = found.get(at) ?? follow(end, scale);
    found.set(at, source);
    return source;
  };

  const follow = (end: End, scale: number): Source => {
    const node = nodes.get(end.node);
    if (!node) throw new BadInput(`there is no node "${end.node}"`);
    const kind = request.kinds.get(node.kind)!;
    if (node.bypassed) return bypassed(node, kind, end.port, scale);
    if (kind.runs === 'surface') return add(nodeStep(node, kind, scale), end.port);
    const full = named(add(nodeStep(node, kind, 1), end.port), kind);
    if (scale === 1 || !REDUCIBLE.has(kind.outputs[end.port]!.type)) return full;
    const inputs = { from: full };
    return add({ does: 'reduce', key: contentKey({ reduce: full, scale }), inputs, scale }, 'value');
  };

  const bypassed = (node: GraphNode, kind: NodeKind, port: string, scale: number): Source => {
    const input = bypassInput(kind, port);
    if (!input)
      throw new BadInput(`${kind.title} ("${node.id}") cannot be bypassed: it makes its ${port} itself`);
    return inputOf(node, kind, input, scale);
  };

  const inputOf = (node: GraphNode, kind: NodeKind, port: string, scale: number): Source => {
    const wire = wireInto(graph, node.id, port);
    if (!wire) throw new BadInput(`${kind.title} ("${node.id}") has nothing wired to its input "${port}"`);
    return sourceOf(wire.from, scale);
  };

  const named = (source: Source, kind: NodeKind): Source => {
    if (!kind.namesRegions) return source;
    const inputs = { from: source };
    return add({ does: 'name-regions', key: contentKey({ name: source, register }), inputs }, 'value');
  };

  const nodeStep = (node: GraphNode, kind: NodeKind, scale: number): NodeStep => {
    const missing = missingInputs(graph, kind, node)[0];
    if (missing)
      throw new BadInput(`${kind.title} ("${node.id}") has nothing wired to its input "${missing}"`);
    const settings = checkShape(kind.settings, node.settings, `settings of "${node.id}"`);
    const wired = Object.keys(kind.inputs).filter((port) => wireInto(graph, node.id, port));
    const inputs = Object.fromEntries(wired.map((port) => [port, inputOf(node, kind, port, scale)]));
    const key = contentKey({
      kind: kind.kind,
      version: kind.version,
      settings,
      inputs,
      scale: kind.runs === 'surface' ? scale : 1,
      colourway: kind.readsColourway ? request.colourway : undefined,
    });
    return { does: 'node', key, node: node.id, kind, settings, inputs, scale };
  };

  const targets = request.targets.map((end) => sourceOf(end, request.scale));
  return { steps: [...steps.values()], targets };
}
