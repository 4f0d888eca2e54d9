import { pressSheet } from '../../src/nodes/press-sheet.ts';
import { nodeKinds } from '../../src/nodes/registry.ts';
import { cancelFlag } from '../../workers/engine/cancel.ts';
import { Engine } from '../../workers/engine/engine.ts';
import type { PlatesValue } from '../../workers/engine/values.ts';
import { evaluations } from '../../workers/nodes/registry.ts';
import { layOut } from '../../workers/tasks/press/laid-out.ts';
import { pressPdfFile } from '../../workers/tasks/press/press-pdf-file.ts';
import { demoWith } from './surface-job.ts';

/** Press PDFs of the demo at 20 megapixels from finished plates, two workers: three plates, then twelve. */
const engine = new Engine({ workers: 2, budgetBytes: 2 ** 31, kinds: nodeKinds, evaluations });
const { job, assets } = await demoWith({});
for (const asset of assets) engine.addAsset(asset);
const request = { job, targets: [{ node: 'plate-grain', port: 'plates' }], scale: 1 };
const run = await engine.evaluate(request, cancelFlag(), () => {});
const three = run.values[0] as PlatesValue;

/** The same three plates as often as it takes, each time in another ink. */
function withPlates(count: number): PlatesValue {
  const plates = Array.from({ length: count }, (_, i) => {
    const plate = three.plates[i % three.plates.length]!;
    const id = i < three.plates.length ? plate.id : `${plate.id}-${i}`;
    return { ...plate, id, order: i + 1, pass: i + 1, ink: { ...plate.ink, id } };
  });
  return { ...three, plates };
}

for (const [count, kind] of [
  [3, 'one-image'],
  [3, 'one-image'],
  [3, 'by-plate'],
  [12, 'one-image'],
] as const) {
  const plates = withPlates(count);
  const laid = layOut(plates, 'trim', pressSheet.settings.parse({}), job.name);
  const { tools, tidy } = engine.toolBox(cancelFlag());
  const cpu = process.cpuUsage();
  const began = performance.now();
  const bytes = await pressPdfFile(
    {
      plates,
      laid,
      kind,
      names: plates.plates.map(({ id }) => id),
      print: {
        paper: { lab: [95, 0.5, -2], surface: 'uncoated' },
        inks: plates.plates.map(({ ink }) => ink),
      },
      title: job.name,
      madeAt: '2031-05-06T07:08:09Z',
      trapped: false,
    },
    tools,
  );
  const { user, system } = process.cpuUsage(cpu);
  const megabytes = (bytes.length / 1e6).toFixed(1);
  console.log(
    `${count} plates, ${kind}: ${(performance.now() - began).toFixed(0)} ms, processor ${((user + system) / 1000).toFixed(0)} ms, ${megabytes} MB, peak ${(process.resourceUsage().maxRSS / 1e6).toFixed(2)} GB`,
  );
  tidy();
}
run.release();
await engine.close();
