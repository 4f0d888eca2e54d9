import { nodeKinds } from '../../src/nodes/registry.ts';
import { withTrapWidth } from '../../src/press/with-trap.ts';
import { cancelFlag } from '../../workers/engine/cancel.ts';
import { Engine } from '../../workers/engine/engine.ts';
import { evaluations } from '../../workers/nodes/registry.ts';
import { registerSlack } from '../../workers/tasks/register-slack.ts';
import { demoWith } from './surface-job.ts';

/** Trap and register slack of the demo at 20 megapixels, three plates, two workers: what comes before is cached. */
const engine = new Engine({ workers: 2, budgetBytes: 2 ** 31, kinds: nodeKinds, evaluations });
const { job, assets } = await demoWith({ 'key-line': { fills: 'kept', tintPercentOf: {} } });
for (const asset of assets) engine.addAsset(asset);
const context = { engine, flag: cancelFlag(), onProgress: () => {} };

async function timed<Result>(name: string, work: () => Promise<Result>): Promise<Result> {
  const cpu = process.cpuUsage();
  const started = performance.now();
  const result = await work();
  const { user, system } = process.cpuUsage(cpu);
  const ms = (performance.now() - started).toFixed(0);
  console.log(`${name}: ${ms} ms, processor time over two ${((user + system) / 2000).toFixed(0)} ms`);
  return result;
}

const evaluate = async (widthMm: number, node: string) => {
  const targets = [{ node, port: 'plates' }];
  const run = await engine.evaluate(
    { job: withTrapWidth(job, widthMm), targets, scale: 1 },
    context.flag,
    () => {},
  );
  run.release();
  return run;
};
await evaluate(0, 'fill-plates');
for (const widthMm of [0.35, 0.36, 1, 1.01]) {
  await timed(`trap of ${widthMm} mm`, () => evaluate(widthMm, 'trap'));
  await evaluate(widthMm, 'key-line');
  await timed('register slack up to 2 mm', () =>
    registerSlack({ job: withTrapWidth(job, widthMm) }, context),
  );
}
await engine.close();
