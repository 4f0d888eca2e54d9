import { nodeKinds } from '../../src/nodes/registry.ts';
import { cancelFlag } from '../../workers/engine/cancel.ts';
import { Engine } from '../../workers/engine/engine.ts';
import { evaluations } from '../../workers/nodes/registry.ts';
import { demoWith } from './surface-job.ts';

/** Halftone of the demo at 20 megapixels, three plates with their grain, two workers: what comes before is cached. */
const engine = new Engine({ workers: 2, budgetBytes: 2 ** 31, kinds: nodeKinds, evaluations });
const { job, assets } = await demoWith({});
for (const asset of assets) engine.addAsset(asset);
const plates = { node: 'plate-grain', port: 'plates' };
const wire = { from: plates, to: { node: 'halftone', port: 'plates' } };

async function run(node: string, settings: Record<string, string | number>): Promise<number> {
  const screened = {
    ...job,
    graph: {
      nodes: [...job.graph.nodes, { id: 'halftone', kind: 'halftone', settings, bypassed: false }],
      wires: [...job.graph.wires, wire],
    },
  };
  const result = await engine.evaluate(
    { job: screened, targets: [{ node, port: 'plates' }], scale: 1 },
    cancelFlag(),
    () => {},
  );
  result.release();
  return result.timings[node] ?? 0;
}

await run('plate-grain', {});
const RUNS: Record<string, string | number>[] = [
  { screen: 'am', lpi: 45 },
  { screen: 'am', lpi: 45.1 },
  { screen: 'fm', dotMm: 0.1 },
  { screen: 'fm', dotMm: 0.11 },
  { screen: 'am', lpi: 55, devicePpi: 1200 },
];
for (const settings of RUNS) {
  const cpu = process.cpuUsage();
  const ms = await run('halftone', settings);
  const { user, system } = process.cpuUsage(cpu);
  console.log(
    `${JSON.stringify(settings)}: ${ms} ms, processor time over two ${((user + system) / 2000).toFixed(0)} ms`,
  );
}
await engine.close();
