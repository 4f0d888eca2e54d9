import { writeFileSync } from 'node:fs';
import { chainRows } from './chain.ts';
import { coldRun } from './cold-run.ts';
import { inkRows, inkTable } from './ink.ts';
import { kernelRows } from './kernels.ts';
import { measureWindow, windowTable } from './window.ts';

/** Below this share of a core a single-threaded figure was taken under load and says nothing. */
const LEAST_LOAD = 0.97;

const [jsonFile] = process.argv.slice(2);
const sizes = [];
for (const ppi of [75, 150, 300, 600]) {
  const { megapixels, rows } = await kernelRows(ppi);
  sizes.push({ megapixels, rows });
  console.log(`\n${megapixels.toFixed(2)} megapixels, one thread\n`);
  console.log('| step | Keyblock ms | OpenCV ms | ratio | cpu/wall |');
  console.log('|---|---|---|---|---|');
  for (const { step, ours, theirs } of rows) {
    const load = Math.min(ours.load, theirs.load);
    const ratio = load < LEAST_LOAD ? 'void: loaded' : (ours.ms / theirs.ms).toFixed(2);
    console.log(
      `| ${step} | ${ours.ms.toFixed(1)} | ${theirs.ms.toFixed(1)} | ${ratio} | ${load.toFixed(2)} |`,
    );
  }
}

const chain = await chainRows();
console.log('\nGrey to labelled map, one thread, against Otsu, distance, components and watershed\n');
console.log('| regions | megapixels | Keyblock ms | OpenCV ms | ratio | cpu/wall |');
console.log('|---|---|---|---|---|---|');
for (const { regions, megapixels, ours, theirs } of chain) {
  const load = Math.min(ours.load, theirs.load);
  const ratio = load < LEAST_LOAD ? 'void: loaded' : (ours.ms / theirs.ms).toFixed(2);
  console.log(
    `| ${regions} | ${megapixels.toFixed(1)} | ${ours.ms.toFixed(0)} | ${theirs.ms.toFixed(0)} | ${ratio} | ${load.toFixed(2)} |`,
  );
}

const ink = await inkRows();
console.log(inkTable(ink));

const cold = coldRun();
console.log(
  `\nDemo, 4000 x 5000 px, 3 plates and proof, cold: ${cold.seconds.toFixed(1)} s, peak ${cold.peakMegabytes.toFixed(0)} MB`,
);
for (const [node, ms] of Object.entries(cold.timings))
  console.log(`  ${node.padEnd(16)} ${String(ms).padStart(6)} ms`);
const window = await measureWindow();
console.log(windowTable(window));
if (jsonFile) writeFileSync(jsonFile, `${JSON.stringify({ sizes, chain, ink, cold, window }, null, 2)}\n`);
