import { readdir } from 'node:fs/promises';
import { basename, join, parse } from 'node:path';
import type { Client, TaskOptions } from '../../workers/client.ts';
import { plainFileName } from '../graph/assets.ts';
import type { BatchItem } from '../graph/batch.ts';
import { BadInput } from '../graph/complaint.ts';
import type { Job } from '../graph/job.ts';
import { hashBytes } from '../graph/keys.ts';
import { jobInStyle, parseStyle, type Style } from '../graph/style.ts';
import { withRough } from '../graph/with-rough.ts';
import { nodeKinds } from '../nodes/registry.ts';
import { numberOf, readSome, wholeOf } from './arguments.ts';
import { folderNames, gather, itemOf, writeItem } from './batch-items.ts';
import { BadUse, codeOf, DONE, FAULTS, lineFor } from './outcome.ts';
import { readBytes } from './read-job.ts';
import { readText } from './read-text.ts';
import { withEngine } from './with-engine.ts';
import { jsonFile, writeFiles } from './write-files.ts';

export const BATCH_USAGE =
  'keyblock batch STYLE DRAWING... --out DIR [--roughs DIR] [--shard I/N] [--width MM] [--ppi N] [--seed N] [--json]';

const text = { type: 'string' } as const;
const OPTIONS = {
  out: text,
  roughs: text,
  shard: text,
  width: text,
  ppi: text,
  seed: text,
  json: { type: 'boolean', default: false },
} as const;

/** What every drawing of a batch is made with. */
interface Way {
  style: Style;
  styleHash: string;
  size: { widthMm?: number; ppi?: number };
  seed: number;
  roughs: ReadonlyMap<string, string>;
}

/** A series of drawings in one house style: goes on past a bad file and resumes where it stopped. */
export async function batch(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readSome(args, OPTIONS, BATCH_USAGE);
  const [stylePath, ...drawings] = files;
  const { out } = values;
  if (out === undefined || stylePath === undefined || drawings.length === 0)
    throw new BadUse(`a style, drawings and --out are needed. Usage: ${BATCH_USAGE}`);
  about(stylePath);
  const styleText = await readText(stylePath);
  const style = parseStyle(styleText, nodeKinds);
  const way: Way = {
    style,
    styleHash: hashBytes(new TextEncoder().encode(styleText)),
    size: {
      ...(values.width === undefined ? {} : { widthMm: numberOf('width', values.width, 1, 5000) }),
      ...(values.ppi === undefined ? {} : { ppi: numberOf('ppi', values.ppi, 20, 12_000) }),
    },
    seed: values.seed === undefined ? 1 : wholeOf('seed', values.seed, 0, 0xffffffff),
    roughs: values.roughs === undefined ? new Map() : await roughsIn(values.roughs),
  };
  const names = folderNames(drawings);
  const mine = drawings.filter(shardOf(values.shard));
  const items = await withEngine(undefined, async (client, options) => {
    const made: BatchItem[] = [];
    for (const drawing of mine) {
      const item = await makeOne(client, options, way, drawing, join(out, names.get(drawing)!));
      process.stderr.write(`${item.state === 'failed' ? item.message : `${drawing}: ${item.state}`}\n`);
      made.push(item);
    }
    const all = await gather(out, style.name, drawings, made);
    const pictures = [];
    for (const { drawing, folder } of all.items) {
      if (folder === null) continue;
      const bytes = await readBytes(join(out, folder, 'proof.png'));
      const asset = await client.addAsset({ name: `${folder}.png`, bytes });
      pictures.push({ asset, title: parse(drawing).name });
    }
    if (pictures.length > 0)
      await writeFiles(out, (await client.run('contactFiles', { pictures }, options)).files);
    await writeFiles(out, [jsonFile('batch.json', all)]);
    if (values.json) process.stdout.write(`${JSON.stringify(all)}\n`);
    else process.stdout.write(tableOf(all.items, out));
    return made;
  });
  return items.some(({ state }) => state !== 'done') ? FAULTS : DONE;
}

/** Makes one drawing, unless it stands there made of the same; never throws for a bad file. */
async function makeOne(
  client: Client,
  options: TaskOptions,
  way: Way,
  drawing: string,
  folder: string,
): Promise<BatchItem> {
  const name = basename(folder);
  let madeFrom = '';
  try {
    const bytes = await readBytes(drawing);
    const roughPath = way.roughs.get(parse(drawing).name);
    const rough =
      roughPath === undefined ? null : { name: basename(roughPath), bytes: await readBytes(roughPath) };
    const parts = [
      way.styleHash,
      hashBytes(bytes),
      rough ? hashBytes(rough.bytes) : '',
      JSON.stringify(way.size),
      way.seed,
    ];
    madeFrom = hashBytes(new TextEncoder().encode(parts.join(' ')));
    const before = await itemOf(folder);
    if (before?.madeFrom === madeFrom) return { ...before, drawing };
    const asset = { name: basename(drawing), bytes };
    const hash = await client.addAsset(asset);
    let job: Job = jobInStyle(way.style, asset.name, hash, way.size);
    if (rough) job = withRough(job, rough.name, await client.addAsset(rough));
    job = await client.run('styleRecipes', { job, rules: way.style.rules, seed: way.seed }, options);
    const { report, files } = await client.run(
      'render',
      { job, formats: ['png', 'proof'], scale: 1 },
      options,
    );
    const assets = [asset, ...(rough ? [rough] : [])].map((each) => ({
      name: `assets/${job.assets[hashBytes(each.bytes)]?.file ?? plainFileName(each.name)}`,
      bytes: each.bytes,
    }));
    const item: BatchItem = {
      drawing,
      folder: name,
      madeFrom,
      state: codeOf(report.complaints) === DONE ? 'done' : 'faults',
      message: null,
      regions: report.regions.length,
      complaints: report.complaints.length,
      plates: report.plates.map(({ id, coveragePercent }) => ({ id, coveragePercent })),
    };
    const memory = await client.memory();
    const whole = { ...report, peakBytes: memory.processPeakBytes ?? memory.peakBytes };
    await writeItem(folder, item, [
      ...files,
      ...assets,
      jsonFile('job.json', job),
      jsonFile('report.json', whole),
    ]);
    return item;
  } catch (error) {
    if ((error as Error).name === 'Cancelled') throw error;
    const message = lineFor(error, drawing);
    return {
      drawing,
      folder: null,
      madeFrom,
      state: 'failed',
      message,
      regions: 0,
      complaints: 0,
      plates: [],
    };
  }
}

/** Which drawings this run makes: every Nth from the Ith. */
function shardOf(shard: string | undefined): (drawing: string, at: number) => boolean {
  if (shard === undefined) return () => true;
  const [i, n] = shard.split('/');
  if (i === undefined || n === undefined) throw new BadUse(`--shard takes I/N, such as 1/4, not "${shard}"`);
  const of = wholeOf('shard', n, 1, 10_000);
  const mine = wholeOf('shard', i, 1, of);
  return (_, at) => at % of === mine - 1;
}

/** Paths of roughs by the name of the drawing they are for. */
async function roughsIn(folder: string): Promise<Map<string, string>> {
  try {
    const names = await readdir(folder);
    return new Map(names.map((name) => [parse(name).name, join(folder, name)]));
  } catch {
    throw new BadInput(`--roughs: there is no folder ${folder}`);
  }
}

function tableOf(items: readonly BatchItem[], out: string): string {
  const wide = Math.max(...items.map(({ drawing }) => basename(drawing).length));
  const rows = items.map(({ drawing, state, regions, plates, message }) => {
    const told =
      message ??
      `${regions} regions  ${plates.map((plate) => `${plate.id} ${plate.coveragePercent.toFixed(1)} %`).join('  ')}`;
    return `${basename(drawing).padEnd(wide)}  ${state.padEnd(6)}  ${told}`;
  });
  return `${rows.join('\n')}\nwritten to ${out}\n`;
}
