import { basename } from 'node:path';
import { newJob } from '../graph/default-graph.ts';
import type { Graph } from '../graph/job.ts';
import { hashBytes } from '../graph/keys.ts';
import { numberOf, readArguments } from './arguments.ts';
import { BadUse, codeOf } from './outcome.ts';
import { readBytes } from './read-job.ts';
import { withEngine } from './with-engine.ts';
import { jsonFile, writeFiles } from './write-files.ts';

export const REGIONS_USAGE =
  'keyblock regions DRAWING [--gap MM] [--smallest MM2] [--tuck MM] [--roughness MM] [--speck MM2] [--width MM] [--ppi N] --out DIR [--json]';

/** Which setting of which node an option stands for, and its range. */
const MEASURES = {
  gap: { node: 'closed-regions', setting: 'gapMm', most: 5 },
  smallest: { node: 'closed-regions', setting: 'smallestMm2', most: 100 },
  tuck: { node: 'closed-regions', setting: 'tuckMm', most: 5 },
  roughness: { node: 'closed-regions', setting: 'roughnessMm', most: 2 },
  speck: { node: 'clean-line', setting: 'speckMm2', most: 5 },
} as const;

const text = { type: 'string' } as const;
const OPTIONS = {
  gap: text,
  smallest: text,
  tuck: text,
  roughness: text,
  speck: text,
  width: text,
  ppi: text,
  out: text,
  json: { type: 'boolean', default: false },
} as const;

/** Label picture and table of a drawing's regions. Resolves to the exit code. */
export async function regions(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 1, REGIONS_USAGE);
  const folder = values.out;
  if (folder === undefined) throw new BadUse(`--out is missing. Usage: ${REGIONS_USAGE}`);
  const settings: Record<string, Record<string, number>> = { 'closed-regions': {}, 'clean-line': {} };
  for (const [option, { node, setting, most }] of Object.entries(MEASURES)) {
    const given = values[option as keyof typeof MEASURES];
    if (given !== undefined) settings[node]![setting] = numberOf(option, given, 0, most);
  }
  const size = {
    widthMm: values.width === undefined ? null : numberOf('width', values.width, 1, 5000),
    ppi: values.ppi === undefined ? null : numberOf('ppi', values.ppi, 20, 12_000),
  };
  const path = files[0]!;
  about(path);
  const bytes = await readBytes(path);
  const graph = regionsGraph({ asset: hashBytes(bytes), ...size }, settings);
  const job = newJob(basename(path), graph, { [hashBytes(bytes)]: { file: basename(path) } });
  const { files: made, found } = await withEngine(undefined, async (client, options) => {
    await client.addAsset({ name: basename(path), bytes });
    return client.run('regions', { job }, options);
  });
  await writeFiles(folder, [...made, jsonFile('regions.json', found)]);
  const { width, height, mm } = found.drawing;
  if (values.json) process.stdout.write(`${JSON.stringify(found)}\n`);
  else
    process.stdout.write(
      `${found.regions.length} regions, ${width} x ${height} px, ${mm.join(' x ')} mm, written to ${folder}\n`,
    );
  return codeOf(found.complaints);
}

function regionsGraph(
  drawing: Graph['nodes'][number]['settings'],
  settings: Record<string, Record<string, number>>,
): Graph {
  const chain = ['line-drawing', 'clean-line', 'closed-regions'];
  const all: Record<string, typeof drawing> = { 'line-drawing': drawing, ...settings };
  return {
    nodes: chain.map((kind) => ({ id: kind, kind, settings: all[kind]!, bypassed: false })),
    wires: chain.slice(1).map((to, i) => ({
      from: { node: chain[i]!, port: 'drawing' },
      to: { node: to, port: 'drawing' },
    })),
  };
}
