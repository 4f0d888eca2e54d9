import type { Complaint } from '../../src/graph/complaint.ts';
import type { Colourway } from '../../src/graph/recipe.ts';
import type { RegionRegister } from '../../src/graph/register.ts';
import { type Outputs, releaseOutputs, retainOutputs, type StepCache, type StepMemory } from './cache.ts';
import { type CancelFlag, stopIfRaised } from './cancel.ts';
import type { Crew } from './crew.ts';
import type { Evaluations, Tools } from './evaluation.ts';
import { nameRegions } from './name-regions.ts';
import { partsOf } from './parts.ts';
import type { Plan, Step } from './plan.ts';
import type { PlanePool } from './pool.ts';
import type { OnProgress } from './progress.ts';
import { reduceValue } from './reduce-value.ts';
import { type Asset, toolBox } from './tools.ts';
import type { Value } from './values.ts';

export interface RunContext {
  pool: PlanePool;
  cache: StepCache;
  crew: Crew;
  assets: ReadonlyMap<string, Asset>;
  evaluations: Evaluations;
  flag: CancelFlag;
  colourway: Colourway;
  register: RegionRegister;
  onProgress: OnProgress;
}

/** The wanted values. Whoever gets them calls `release` when done with them. */
export interface RunResult {
  /** In the order of the plan's targets. */
  values: Value[];
  complaints: Complaint[];
  /** Milliseconds by node id, of what had to be computed. */
  timings: Record<string, number>;
  /** What each node on the way had to say and how long it took, whether now or when it was computed. */
  told: Record<string, StepMemory>;
  release(): void;
}

/**
 * Runs the steps of a plan that the cache does not hold.
 *
 * @throws Cancelled, BadInput, or what a node throws; nothing half-done enters the cache
 */
export async function runPlan(plan: Plan, context: RunContext): Promise<RunResult> {
  const { pool, cache, flag } = context;
  const held = new Map<string, Outputs>();
  const timings: Record<string, number> = {};
  const letGo = (key: string) => {
    releaseOutputs(pool, held.get(key)!);
    held.delete(key);
  };
  const release = () => {
    for (const key of [...held.keys()]) letGo(key);
    cache.trim();
  };
  try {
    const { steps, cached } = neededSteps(plan, cache);
    for (const key of cached) {
      const outputs = cache.get(key)!;
      retainOutputs(pool, outputs);
      held.set(key, outputs);
    }
    for (const [done, step] of steps.entries()) {
      stopIfRaised(flag);
      if (step.does === 'node') context.onProgress({ node: step.node, done, of: steps.length });
      held.set(step.key, await runStep(step, held, context));
      if (step.does === 'node') timings[step.node] = cache.memory(step.key)!.ms;
      const wanted = stillWanted(plan, steps.slice(done + 1));
      for (const key of [...held.keys()]) if (!wanted.has(key)) letGo(key);
    }
    const values = plan.targets.map(({ key, port }) => held.get(key)![port]!);
    const told = Object.fromEntries(
      plan.steps.flatMap((step) =>
        step.does === 'node' ? [[step.node, cache.memory(step.key)!] as const] : [],
      ),
    );
    const complaints = plan.steps.flatMap((step) => cache.memory(step.key)?.complaints ?? []);
    return { values, complaints, timings, told, release };
  } catch (error) {
    release();
    throw error;
  }
}

/** Walks upstream from the targets as far as the cache does not know the answer. */
function neededSteps(plan: Plan, cache: StepCache): { steps: Step[]; cached: Set<string> } {
  const needed = new Set<string>();
  const cached = new Set<string>();
  const byKey = new Map(plan.steps.map((step) => [step.key, step]));
  const open = plan.targets.map((target) => target.key);
  while (open.length > 0) {
    const key = open.pop()!;
    if (needed.has(key) || cached.has(key)) continue;
    if (cache.has(key)) {
      cached.add(key);
      continue;
    }
    needed.add(key);
    open.push(...Object.values(byKey.get(key)!.inputs).map((source) => source.key));
  }
  return { steps: plan.steps.filter((step) => needed.has(step.key)), cached };
}

function stillWanted(plan: Plan, later: readonly Step[]): Set<string> {
  const wanted = new Set(plan.targets.map((target) => target.key));
  for (const step of later) for (const source of Object.values(step.inputs)) wanted.add(source.key);
  return wanted;
}

/** Runs one step and puts it in the cache; the caller is a holder of what it gives. */
async function runStep(
  step: Step,
  held: ReadonlyMap<string, Outputs>,
  context: RunContext,
): Promise<Outputs> {
  const { pool, cache, crew, assets, flag } = context;
  const inputs = Object.fromEntries(
    Object.entries(step.inputs).map(([port, source]) => [port, held.get(source.key)![source.port]!]),
  );
  const { tools, complaints, tidy } = toolBox(pool, crew, assets, flag);
  const parts = partsOf(step, context, complaints);
  const started = performance.now();
  try {
    const outputs = await outputsOf(step, inputs, { ...tools, part: parts.part }, context);
    stopIfRaised(flag);
    retainOutputs(pool, outputs);
    cache.put(step.key, outputs, { complaints, ms: Math.round(performance.now() - started) });
    return outputs;
  } finally {
    tidy();
    parts.letGo();
  }
}

async function outputsOf(
  step: Step,
  inputs: Record<string, Value>,
  tools: Tools,
  context: RunContext,
): Promise<Outputs> {
  if (step.does === 'name-regions') return { value: nameRegions(inputs.from!, context.register) };
  if (step.does === 'reduce') return { value: await reduceValue(inputs.from!, step.scale, tools) };
  const { settings, scale } = step;
  const evaluation = context.evaluations.get(step.kind.kind)!;
  return evaluation.run({ settings, inputs, colourway: context.colourway, scale, tools });
}
