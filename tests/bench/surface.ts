import { paperStock } from '../../src/nodes/paper-stock.ts';
import { plateGrain } from '../../src/nodes/plate-grain.ts';
import { pressFaults } from '../../src/nodes/press-faults.ts';
import { registerOffset } from '../../src/nodes/register-offset.ts';
import { nodeKinds } from '../../src/nodes/registry.ts';
import { cancelFlag } from '../../workers/engine/cancel.ts';
import { Engine } from '../../workers/engine/engine.ts';
import { evaluations } from '../../workers/nodes/registry.ts';
import { demoWith } from './surface-job.ts';

/** Surface steps of the demo at 20 megapixels, three plates, two workers: everything before them is cached. */
const SURFACE = [plateGrain, registerOffset, pressFaults, paperStock].map(({ kind }) => kind).concat('proof');
/** Every run has another grain, so that nothing comes from the cache. */
let runs = 1;
const engine = new Engine({ workers: 2, budgetBytes: 2 ** 31, kinds: nodeKinds, evaluations });

for (const scale of [4, 1])
  for (const pattern of ['mottle', 'stipple'] as const)
    for (const press of ['stencil-duplicator', 'offset', 'any'] as const) {
      const took: number[] = [];
      const busy: number[] = [];
      let steps = '';
      for (let turn = 1; turn <= 3; turn++) {
        const { job, assets } = await demoWith({
          'plate-grain': { pattern, seed: runs++ },
          'press-faults': { process: press, seed: 1 },
        });
        for (const asset of assets) engine.addAsset(asset);
        const before = [{ node: 'key-line', port: 'plates' }];
        const warm = await engine.evaluate({ job, targets: before, scale }, cancelFlag(), () => {});
        warm.release();
        const cpu = process.cpuUsage();
        const started = performance.now();
        const run = await engine.evaluate(
          { job, targets: [{ node: 'proof', port: 'proof' }], scale },
          cancelFlag(),
          () => {},
        );
        took.push(performance.now() - started);
        const { user, system } = process.cpuUsage(cpu);
        busy.push((user + system) / 2000);
        steps = SURFACE.map((id) => `${id} ${run.timings[id] ?? '-'}`).join(', ');
        run.release();
      }
      const best = took.slice(1).sort((a, b) => a - b);
      console.log(
        `1/${scale} ${pattern}, ${press}: ${best[1]!.toFixed(0)} ms, processor time over two ${Math.min(...busy).toFixed(0)} ms: ${steps}`,
      );
    }
await engine.close();
