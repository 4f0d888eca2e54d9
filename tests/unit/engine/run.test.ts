import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hashBytes } from '../../../src/graph/keys.ts';
import { topologicalOrder } from '../../../src/graph/order.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { Cancelled, cancelFlag, raise } from '../../../workers/engine/cancel.ts';
import { Engine } from '../../../workers/engine/engine.ts';
import type { RunResult } from '../../../workers/engine/run-plan.ts';
import { buffersOf } from '../../../workers/engine/values.ts';
import { evaluations } from '../../../workers/nodes/registry.ts';
import { defaultJob, withRecipes } from '../support/jobs.ts';

const DRAWING = new TextEncoder().encode(
  `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="20mm" viewBox="0 0 30 20">
    <g fill="none" stroke="#000" stroke-width="0.5"><circle cx="9" cy="10" r="6"/><path d="M18 3h9v14h-9z"/></g>
  </svg>`,
);
const TINTS = { straw: 60, brick: 30 };
const nothing = () => {};

/** Hashes of all planes of a run's value. */
function printsOf(run: RunResult): string[] {
  return buffersOf(run.values[0]!).map((buffer) => hashBytes(new Uint8Array(buffer)));
}

function drawn() {
  return withRecipes(defaultJob({ asset: hashBytes(DRAWING), ppi: 300 }), {}, TINTS);
}

describe('an engine', () => {
  let engine: Engine;

  beforeAll(() => {
    engine = new Engine({ workers: 2, budgetBytes: 64 * 1024 * 1024, kinds: nodeKinds, evaluations });
    engine.addAsset({ name: 'drawing.svg', bytes: DRAWING });
  });

  afterAll(() => engine.close());

  it('leaves every value as it was when later nodes work from it', async () => {
    const job = drawn();
    const sorted = topologicalOrder(job.graph);
    const order = 'order' in sorted ? sorted.order : [];
    const held: { name: string; run: RunResult; prints: string[] }[] = [];
    for (const node of order)
      for (const port of Object.keys(nodeKinds.get(node.kind)!.outputs)) {
        const targets = [{ node: node.id, port }];
        const run = await engine.evaluate({ job, targets, scale: 1 }, cancelFlag(), nothing);
        for (const { name, run: before, prints } of held)
          expect(printsOf(before), `${name} after ${node.id}`).toEqual(prints);
        held.push({ name: node.id, run, prints: printsOf(run) });
      }
    expect(held.flatMap(({ prints }) => prints)).toHaveLength(16);
    for (const { run } of held) run.release();
  });

  it('computes nothing twice', async () => {
    const target = { targets: [{ node: 'proof', port: 'proof' }], scale: 1 };
    const first = await engine.evaluate({ job: drawn(), ...target }, cancelFlag(), nothing);
    first.release();
    const again = await engine.evaluate({ job: drawn(), ...target }, cancelFlag(), nothing);
    expect(again.timings).toEqual({});
    again.release();
    const regrained = drawn();
    regrained.graph.nodes.find((node) => node.id === 'plate-grain')!.settings = { seed: 5 };
    const after = await engine.evaluate({ job: regrained, ...target }, cancelFlag(), nothing);
    expect(Object.keys(after.timings).sort()).toEqual(['plate-grain', 'proof', 'register-offset']);
    after.release();
  });

  it('lets go of everything that nobody holds', async () => {
    const small = new Engine({ workers: 1, budgetBytes: 0, kinds: nodeKinds, evaluations });
    small.addAsset({ name: 'drawing.svg', bytes: DRAWING });
    const targets = [{ node: 'plate-grain', port: 'plates' }];
    const run = await small.evaluate({ job: drawn(), targets, scale: 1 }, cancelFlag(), nothing);
    expect(small.pool.liveBytes).toBe(3 * 354 * 236);
    run.release();
    expect(small.pool.liveBytes).toBe(0);
    await small.close();
  });

  it('keeps nothing of cancelled work, and does the next job as if nothing had been', async () => {
    const other = new Engine({ workers: 2, budgetBytes: 64 * 1024 * 1024, kinds: nodeKinds, evaluations });
    other.addAsset({ name: 'drawing.svg', bytes: DRAWING });
    const request = { job: drawn(), targets: [{ node: 'proof', port: 'proof' }], scale: 1 };
    const flag = cancelFlag();
    const work = other.evaluate(request, flag, ({ node }) => {
      if (node === 'clean-line') raise(flag);
    });
    await expect(work).rejects.toBeInstanceOf(Cancelled);
    const next = await other.evaluate(request, cancelFlag(), nothing);
    expect(Object.keys(next.timings)).not.toContain('line-drawing');
    expect(Object.keys(next.timings)).toContain('clean-line');
    next.release();
    await other.close();
  });

  it('reports each node as its turn comes', async () => {
    const seen: string[] = [];
    const job = drawn();
    job.graph.nodes.find((node) => node.id === 'closed-regions')!.settings = { tuckMm: 0.7 };
    const targets = [{ node: 'fill-plates', port: 'plates' }];
    const run = await engine.evaluate({ job, targets, scale: 1 }, cancelFlag(), ({ node, done, of }) => {
      expect(done).toBeLessThan(of);
      seen.push(node);
    });
    expect(seen).toEqual(['closed-regions', 'region-tints', 'fill-plates']);
    run.release();
  });

  it('says which file of a job is missing', async () => {
    const job = defaultJob({ asset: 'f'.repeat(64) });
    const targets = [{ node: 'line-drawing', port: 'drawing' }];
    await expect(engine.evaluate({ job, targets, scale: 1 }, cancelFlag(), nothing)).rejects.toThrow(
      'the file ffffffffffff... of this job is missing; add the drawing again',
    );
  });
});
