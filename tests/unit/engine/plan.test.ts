import { describe, expect, it } from 'vitest';
import { BadInput } from '../../../src/graph/complaint.ts';
import { defaultGraph, newJob } from '../../../src/graph/default-graph.ts';
import type { Job } from '../../../src/graph/job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { colourwayInUse } from '../../../workers/engine/engine.ts';
import { makePlan, type Plan } from '../../../workers/engine/plan.ts';

const PROOF = { node: 'proof', port: 'proof' };
const job = newJob('test', defaultGraph({ asset: 'a'.repeat(64) }, {}), {});

function plan(from: Job, scale = 1): Plan {
  return makePlan({ job: from, kinds: nodeKinds, colourway: colourwayInUse(from), targets: [PROOF], scale });
}

function changed(node: string, change: Partial<Job['graph']['nodes'][number]>): Job {
  const nodes = job.graph.nodes.map((other) => (other.id === node ? { ...other, ...change } : other));
  return { ...job, graph: { ...job.graph, nodes } };
}

/** Keys of the node steps by node id. */
function keys(of: Plan): Map<string, string> {
  return new Map(of.steps.flatMap((step) => (step.does === 'node' ? [[step.node, step.key] as const] : [])));
}

/** Nodes whose key differs between two plans. */
function redone(before: Plan, after: Plan): string[] {
  const old = keys(before);
  return [...keys(after)].filter(([node, key]) => old.get(node) !== key).map(([node]) => node);
}

describe('a plan', () => {
  it('holds every step after all that feed it, and nothing that the target does not need', () => {
    const { steps, targets } = plan(job);
    const seen = new Set<string>();
    for (const step of steps) {
      for (const { key } of Object.values(step.inputs)) expect(seen).toContain(key);
      seen.add(step.key);
    }
    expect(seen).toContain(targets[0]!.key);
    expect(keys(plan(job)).has('press-file')).toBe(false);
  });

  it('gives equal keys to equal work, whatever the nodes are called', () => {
    const renamed = JSON.parse(
      JSON.stringify(job)
        .replaceAll('"plate-grain"', '"grain"')
        .replace('"kind":"grain"', '"kind":"plate-grain"'),
    );
    expect(plan(renamed).targets[0]!.key).toBe(plan(job).targets[0]!.key);
  });

  it('redoes only what lies downstream of a changed setting', () => {
    const after = plan(changed('plate-grain', { settings: { seed: 7 } }));
    expect(redone(plan(job), after)).toEqual(['plate-grain', 'register-offset', 'proof']);
  });

  it('gives a setting at its default the key of the setting left out', () => {
    const after = plan(changed('plate-grain', { settings: { seed: 1 } }));
    expect(redone(plan(job), after)).toEqual([]);
  });

  it('redoes tints and what follows for another colourway, and no regions', () => {
    const other = { ...job.colourways[0]!, recipes: { r1: { soot: 50 } } };
    const redo = redone(plan(job), plan({ ...job, colourways: [other] }));
    expect(redo).toContain('region-tints');
    expect(redo).not.toContain('closed-regions');
    expect(redo).not.toContain('clean-line');
  });

  it('names regions again for another register, without finding them again', () => {
    const register = { labelMap: null, next: 9, regions: [] };
    const redo = redone(plan(job), plan({ ...job, register }));
    expect(redo).toContain('region-tints');
    expect(redo).not.toContain('closed-regions');
  });

  it('finds regions at full size whatever the scale, and prints at the scale asked for', () => {
    const quarter = plan(job, 4);
    expect(redone(plan(job), quarter)).not.toContain('closed-regions');
    const scales = quarter.steps.flatMap((step) =>
      step.does === 'node' ? [[step.kind.runs, step.scale] as const] : [],
    );
    expect(scales.every(([runs, scale]) => scale === (runs === 'structure' ? 1 : 4))).toBe(true);
    expect(quarter.steps.filter((step) => step.does === 'reduce')).toHaveLength(2);
  });

  it('leads past a bypassed node', () => {
    const after = keys(plan(changed('plate-grain', { bypassed: true })));
    expect(after.has('plate-grain')).toBe(false);
    expect(after.has('key-line')).toBe(true);
  });

  it('says that a node which makes its output itself cannot be bypassed', () => {
    expect(() => plan(changed('paper-stock', { bypassed: true }))).toThrow(
      new BadInput('Paper stock ("paper-stock") cannot be bypassed: it makes its paper itself'),
    );
  });

  it('names the input that has no wire', () => {
    const wires = job.graph.wires.filter((wire) => wire.to.node !== 'key-line' || wire.to.port !== 'drawing');
    expect(() => plan({ ...job, graph: { ...job.graph, wires } })).toThrow(
      new BadInput('Key line ("key-line") has nothing wired to its input "drawing"'),
    );
  });
});
