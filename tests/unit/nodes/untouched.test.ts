import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { withTrap } from '../../../src/press/with-trap.ts';
import { cancelFlag } from '../../../workers/engine/cancel.ts';
import { buffersOf, type Value } from '../../../workers/engine/values.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

const hashOf = (value: Value) =>
  buffersOf(value).map((buffer) => createHash('sha256').update(new Uint8Array(buffer).slice()).digest('hex'));

/** The job with a Halftone before its Press file. */
function screened(job: Job): Job {
  const halftone = { id: 'halftone', kind: 'halftone', settings: { lpi: 20 }, bypassed: false };
  const wires = job.graph.wires.flatMap((wire) =>
    wire.to.node === 'press-file' && wire.to.port === 'plates'
      ? [
          { ...wire, to: { node: 'halftone', port: 'plates' } },
          { from: { node: 'halftone', port: 'plates' }, to: wire.to },
        ]
      : [wire],
  );
  return { ...job, graph: { nodes: [...job.graph.nodes, halftone], wires } };
}

describe('no node changes what it was given', () => {
  const line = drawnPlane(160, 120, (x, y) =>
    Math.abs(Math.hypot(x - 80, y - 60) - 40) < 2 || x === y ? 255 : 0,
  );

  it.each([1, 2])('at a scale of 1 to %d', async (scale) => {
    const plain = screened(withTrap(defaultJob({ asset: bench.drawing(line), ppi: 150 })));
    const job = withRecipes(
      withSettings(plain, {
        trap: { widthMm: 0.5 },
        'clean-line': { heavierMm: 0.2, speckMm2: 0.5 },
        'plate-grain': { openSolidsPercent: 10 },
        'register-offset': { how: 'by-chance' },
      }),
      {},
      { straw: 60, brick: 100 },
    );
    const targets = job.graph.nodes.flatMap(({ id, kind }) =>
      Object.keys(nodeKinds.get(kind)!.outputs).map((port) => ({ node: id, port })),
    );
    const before = new Map<string, string[]>();
    for (const end of targets) {
      const run = await bench.engine.evaluate({ job, targets: [end], scale }, cancelFlag(), () => {});
      before.set(`${end.node}.${end.port}`, hashOf(run.values[0]!));
    }
    const all = await bench.engine.evaluate({ job, targets, scale }, cancelFlag(), () => {});
    expect(all.timings).toEqual({});
    all.values.forEach((value, i) => {
      const { node, port } = targets[i]!;
      expect([node, hashOf(value)]).toEqual([node, before.get(`${node}.${port}`)]);
    });
  });
});
