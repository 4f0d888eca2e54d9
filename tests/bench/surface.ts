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
const engine = new Engine({ workers: 2, budgetBytes: 2 ** 31, kinds: nodeKinds, evaluations });

for (const scale of [4, 1])
  for (const pattern of ['mottle', 'cloud', 'stipple'] as const)
    for (const process of ['stencil-duplicator', 'offset', 'any'] as const) {
      const took: number[] = [];
      let steps = '';
      for (let seed = 1; seed <= 4; seed++) {
        const { job, assets } = await demoWith({
          'plate-grain': { pattern, seed },
          'press-faults': { process, seed },
        });
        for (const asset of assets) engine.addAsset(asset);
        const before = [{ node: 'key-line', port: 'plates' }];
        const warm = await engine.evaluate({ job, targets: before, scale }, cancelFlag(), () => {});
        warm.release();
        const started = performance.now();
        const run = await engine.evaluate(
          { job, targets: [{ node: 'proof', port: 'proof' }], scale },
          cancelFlag(),
          () => {},
        );
        took.push(performance.now() - started);
        steps = SURFACE.map((id) => `${id} ${run.timings[id] ?? '-'}`).join(', ');
        run.release();
      }
      const best = took.slice(1).sort((a, b) => a - b);
      console.log(
        `1/${scale} ${pattern}, ${process}: ${best[1]!.toFixed(0)} ms (best ${best[0]!.toFixed(0)}): ${steps}`,
      );
    }
await engine.close();
