import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Lab, Stock } from '../../src/graph/inks.ts';
import { DEMO_INKS } from '../../src/ink/demo-inks.ts';
import { rankInkSets } from '../../src/ink/ink-sets.ts';
import { printModel } from '../../src/ink/model.ts';
import { proofTable } from '../../src/ink/proof-table.ts';
import { recipeSearch, USUAL_RULES } from '../../src/ink/recipe-search.ts';
import { encodeSrgb, linearOfXyz } from '../../src/ink/srgb.ts';
import { proof } from '../../workers/kernels/proof.ts';
import { randomOf } from '../unit/support/random.ts';
import { type Measured, measure } from './measure.ts';
import { sharedPlane } from './pictures.ts';

const PAPER: Stock = { lab: [95, 0.5, -2], surface: 'uncoated' };
const THREE = DEMO_INKS.slice(0, 3);
const [WIDTH, HEIGHT] = [4000, 5000];
/** 36 nodes an axis, the next above 33 that a square look-up picture can hold. */
const HALD_LEVEL = 6;

export interface InkRow {
  step: string;
  ours: Measured;
  /** Null where there is nothing to compare with. */
  theirsMs: number | null;
}

/** Recipe search, ink sets and the proof of a 20 megapixel print in three inks, one thread. */
export async function inkRows(): Promise<InkRow[]> {
  const random = randomOf(7);
  const wanted = Array.from(
    { length: 40 },
    (): Lab => [20 + 70 * random(), 80 * random() - 40, 80 * random() - 40],
  );
  const model = printModel({ paper: PAPER, inks: THREE });
  const searches = () => {
    const find = recipeSearch(model, USUAL_RULES);
    for (const lab of wanted) find(lab, 2);
  };
  const sets = () =>
    rankInkSets({
      shelf: DEMO_INKS.slice(0, 12),
      paper: PAPER,
      printing: {},
      wanted: wanted.slice(0, 8).map((lab) => ({ lab, weight: 1 })),
      count: 3,
      rules: USUAL_RULES,
      most: 8,
    });
  return [
    { step: 'recipes of 40 colours, 3 inks', ours: await measure(searches), theirsMs: null },
    { step: '220 sets of 3 inks, 8 colours', ours: await measure(sets), theirsMs: null },
    await proofRow('proof, areas of 64 px', (x, y) => ((x >> 6) * 31 + (y >> 6) * 17) & 255),
    await proofRow('proof, no two pixels alike', () => Math.floor(256 * random())),
  ];
}

async function proofRow(step: string, coverage: (x: number, y: number) => number): Promise<InkRow> {
  const plates = THREE.map((_, k) => {
    const plane = sharedPlane(WIDTH, HEIGHT);
    for (let i = 0; i < plane.data.length; i++)
      plane.data[i] = coverage((i % WIDTH) + 64 * k, Math.floor(i / WIDTH) + 192 * k);
    return plane;
  });
  const { size, data } = proofTable(printModel({ paper: PAPER, inks: THREE }));
  const texture = sharedPlane(WIDTH, HEIGHT);
  texture.data.fill(128);
  const axes = [linearOfXyz([1, 0, 0]), linearOfXyz([0, 1, 0]), linearOfXyz([0, 0, 1])];
  const args = {
    plates,
    texture,
    depth: 0,
    toScreen: [0, 1, 2].flatMap((row) => axes.map((axis) => axis[row]!)),
    encoding: Uint8Array.from({ length: 4096 }, (_, i) => Math.round(255 * encodeSrgb(i / 4095))),
    out: new Uint8Array(new SharedArrayBuffer(WIDTH * HEIGHT * 3)),
    size,
    table: data,
  };
  const ours = await measure(() => proof(args, 0, HEIGHT), 3);
  return { step, ours, theirsMs: imageMagickMs(plates.map((plane) => plane.data)) };
}

/**
 * The same picture through ImageMagick's three-dimensional look-up, reading it in taken off; null where
 * ImageMagick is not installed.
 */
function imageMagickMs(plates: readonly Uint8Array[]): number | null {
  const folder = mkdtempSync(join(tmpdir(), 'keyblock-bench-'));
  const picture = join(folder, 'plates.ppm');
  const pixels = new Uint8Array(WIDTH * HEIGHT * 3);
  for (let i = 0; i < WIDTH * HEIGHT; i++) for (let k = 0; k < 3; k++) pixels[3 * i + k] = plates[k]![i]!;
  writeFileSync(picture, Buffer.concat([Buffer.from(`P6 ${WIDTH} ${HEIGHT} 255\n`), pixels]));
  const run = (...steps: string[]): number => {
    const started = performance.now();
    execFileSync('convert', ['-limit', 'thread', '1', picture, ...steps, 'null:'], { stdio: 'ignore' });
    return performance.now() - started;
  };
  const least = (...steps: string[]) => Math.min(...[1, 2, 3].map(() => run(...steps)));
  try {
    const hald = `hald:${HALD_LEVEL}`;
    return least(hald, '-hald-clut') - least(hald);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The rows as a table. */
export function inkTable(rows: readonly InkRow[]): string {
  return [
    '\nInks, one thread; proofs of 20 megapixels in three inks against ImageMagick -hald-clut\n',
    '| step | Keyblock ms | ImageMagick ms | ratio | cpu/wall |',
    '|---|---|---|---|---|',
    ...rows.map(({ step, ours, theirsMs }) => {
      const theirs =
        theirsMs === null ? '- | -' : `${theirsMs.toFixed(0)} | ${(ours.ms / theirsMs).toFixed(2)}`;
      return `| ${step} | ${ours.ms.toFixed(0)} | ${theirs} | ${ours.load.toFixed(2)} |`;
    }),
  ].join('\n');
}
