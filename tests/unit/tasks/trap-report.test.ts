import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { lintGraph } from '../../../src/graph/wiring.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { withPairWidth, withTrap, withTrapWidth } from '../../../src/press/with-trap.ts';
import { cancelFlag } from '../../../workers/engine/cancel.ts';
import { trapReport } from '../../../workers/tasks/trap-report.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, reopened, withRecipes } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

const PPI = 254;

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** A box of 20 x 10 mm, parted in the middle by a line of 2 px, straw on the left and soot on the right. */
function halves(): Job {
  const line = drawnPlane(240, 140, (x, y) => {
    const off = Math.max(Math.abs(x - 119.5) - 100, Math.abs(y - 69.5) - 50);
    const inside = Math.max(Math.abs(x - 119.5) - 100, Math.abs(y - 69.5) - 50) < 0;
    return Math.abs(off) < 1 || (inside && Math.abs(x - 119.5) < 1) ? 255 : 0;
  });
  return defaultJob({ asset: bench.drawing(line), ppi: PPI });
}

const report = (job: Job) =>
  trapReport({ job, scale: 1 }, { engine: bench.engine, flag: cancelFlag(), onProgress: () => {} });

/** The job tinted by what lies left and right of the middle. */
async function tinted(job: Job): Promise<Job> {
  const { table, ids } = await bench.value(job, 'closed-regions.regions', 'regions');
  const recipes = Object.fromEntries<Record<string, number>>(
    table.flatMap(({ touchesFrame, anchorMm: [x] }, i): [string, Record<string, number>][] =>
      touchesFrame ? [] : [[ids[i]!, x < 12 ? { straw: 100 } : { soot: 100 }]],
    ),
  );
  return withRecipes(job, recipes);
}

describe('the report of the trap', () => {
  it('tells which way a border is trapped, how wide, what colour the overlap gets, and why', async () => {
    const job = withTrapWidth(await tinted(halves()), 0.4);
    const { borders } = await report(job);
    const [border] = borders;
    expect(border).toMatchObject({
      does: 'spread',
      plates: ['straw'],
      widthMm: 0.4,
      reason: 'lighter-spreads',
      overlap: { recipe: { straw: 100, soot: 100 } },
    });
    expect(border!.why).toMatch(/lighter/);
    expect(border!.overlap!.lab[0]).toBeLessThan(25);
    expect(border!.placeMm![0]).toBeCloseTo(12, 0);
    expect(border!.placeMm![1]).toBeCloseTo(7, 0);
  });

  it('gives a border the width that was set for it', async () => {
    const job = await tinted(halves());
    const first = await report(withTrap(job));
    const own = await report(withPairWidth(withTrapWidth(job, 0.2), first.borders[0]!.between, 0.6));
    expect(own.borders[0]!.widthMm).toBe(0.6);
  });

  it('says that there is no Trap node', async () => {
    await expect(report(halves())).rejects.toThrow(/no Trap node/);
  });
});

describe('a job that gets a Trap node', () => {
  it('has it between its fills and its Key line, wired, and opens again as it was saved', () => {
    const job = withTrap(halves());
    expect(lintGraph(job.graph, nodeKinds)).toEqual([]);
    expect(reopened(job).graph).toEqual(job.graph);
    const into = job.graph.wires.filter(({ to }) => to.node === 'trap').map(({ to }) => to.port);
    expect(into.sort()).toEqual(['drawing', 'plates', 'regions']);
    expect(job.graph.wires.find(({ to }) => to.node === 'key-line' && to.port === 'plates')!.from).toEqual({
      node: 'trap',
      port: 'plates',
    });
    expect(withTrap(job)).toBe(job);
  });
});
