import type { Complaint } from '../../src/graph/complaint.ts';
import { contentKey } from '../../src/graph/keys.ts';
import { type Outputs, releaseOutputs, retainOutputs, type StepCache } from './cache.ts';
import type { Tools } from './evaluation.ts';
import type { Step } from './plan.ts';
import type { PlanePool } from './pool.ts';

/**
 * The parts of a step that outlive it: from the cache, or made and put there. What a part had to say is said again.
 *
 * @param complaints where the step's complaints are gathered
 */
export function partsOf(
  step: Step,
  { pool, cache }: { pool: PlanePool; cache: StepCache },
  complaints: Complaint[],
): { part: Tools['part']; letGo(): void } {
  const held: Outputs[] = [];
  const part: Tools['part'] = async (name, settings, make) => {
    const kind = step.does === 'node' ? [step.kind.kind, step.kind.version] : step.does;
    const key = contentKey({ part: name, kind, inputs: step.inputs, settings });
    const known = cache.get(key);
    if (known) {
      retainOutputs(pool, known);
      held.push(known);
      complaints.push(...cache.memory(key)!.complaints);
      return known.part as Awaited<ReturnType<typeof make>>;
    }
    const before = complaints.length;
    const started = performance.now();
    const value = await make();
    const outputs = { part: value };
    retainOutputs(pool, outputs);
    held.push(outputs);
    const ms = Math.round(performance.now() - started);
    cache.put(key, outputs, { complaints: complaints.slice(before), ms });
    return value;
  };
  const letGo = () => {
    for (const outputs of held) releaseOutputs(pool, outputs);
  };
  return { part, letGo };
}
