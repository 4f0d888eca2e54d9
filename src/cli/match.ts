import { basename } from 'node:path';
import { defaultGraph, newJob } from '../graph/default-graph.ts';
import { refuseDoubles } from '../graph/doubles.ts';
import { type InkFile, inkFileSchema } from '../graph/inks.ts';
import type { GraphNode, Job } from '../graph/job.ts';
import { readJson } from '../graph/json-text.ts';
import { hashBytes } from '../graph/keys.ts';
import type { Matches } from '../graph/matches.ts';
import { checkShape } from '../graph/parse-job.ts';
import { withRough } from '../graph/with-rough.ts';
import { numberOf, readArguments, wholeOf } from './arguments.ts';
import { drawingJob, SIZE_OPTIONS } from './drawing-job.ts';
import { BadUse, codeOf } from './outcome.ts';
import { readBytes } from './read-job.ts';
import { readText } from './read-text.ts';
import { withEngine } from './with-engine.ts';
import { jsonFile, writeFiles } from './write-files.ts';

export const MATCH_USAGE =
  'keyblock match DRAWING ROUGH --inks FILE --out DIR [--gap MM] [--smallest MM2] [--width MM] [--ppi N] [--step PERCENT] [--alternatives N] [--json]';

const text = { type: 'string' } as const;
const OPTIONS = {
  inks: text,
  out: text,
  gap: text,
  smallest: text,
  tuck: text,
  roughness: text,
  speck: text,
  ...SIZE_OPTIONS,
  step: text,
  alternatives: text,
  json: { type: 'boolean', default: false },
} as const;

/** Recipes for a drawing's regions from a rough, and a job ready to render. Resolves to the exit code. */
export async function match(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 2, MATCH_USAGE);
  const { inks: inkFile, out } = values;
  if (inkFile === undefined || out === undefined)
    throw new BadUse(`--inks and --out are needed. Usage: ${MATCH_USAGE}`);
  const alternatives =
    values.alternatives === undefined ? 0 : wholeOf('alternatives', values.alternatives, 0, 12);
  const step = values.step === undefined ? undefined : numberOf('step', values.step, 1, 50);
  const [drawing, rough] = files as [string, string];
  about(inkFile);
  const inks = checkShape(inkFileSchema, readJson(await readText(inkFile), 'ink file'));
  refuseDoubles('inks', inks.inks);
  about(drawing);
  const plain = await drawingJob(drawing, values);
  about(rough);
  const bytes = await readBytes(rough);
  const job = withStep(withRough(inkedJob(plain.job, inks), basename(rough), hashBytes(bytes)), step);
  about(drawing);
  const assets = [
    { name: basename(drawing), bytes: plain.bytes },
    { name: basename(rough), bytes },
  ];
  const found = await withEngine(undefined, async (client, options) => {
    for (const asset of assets) await client.addAsset(asset);
    return client.run('match', { job, alternatives }, options);
  }).catch((error: Error) => {
    if (error.message.startsWith(`${basename(rough)}: `)) about(rough);
    throw error;
  });
  const bytesOf = new Map(assets.map((asset) => [hashBytes(asset.bytes), asset.bytes]));
  const kept = [...bytesOf].map(([hash, content]) => ({
    name: `assets/${job.assets[hash]!.file}`,
    bytes: content,
  }));
  await writeFiles(out, [jsonFile('recipes.json', found), jsonFile('job.json', job), ...kept]);
  process.stdout.write(values.json ? `${JSON.stringify(found)}\n` : summary(found, out));
  return codeOf(found.complaints);
}

/** The look-first job of the same drawing, printed in the inks of a file on its paper. */
function inkedJob(plain: Job, file: InkFile): Job {
  const { inks, passes, measured, paper, takeUp, takeUps } = file;
  const settings = {
    inks,
    plates: inks.map(({ id }, i) => ({ id, ink: id, pass: passes?.[i] ?? i + 1 })),
    readOn: paper,
    measured,
    takeUpPercent: takeUp * 100,
    takeUps: takeUps.map(({ below, above, takeUp: share }) => ({ below, above, percent: share * 100 })),
  };
  const given = new Map(plain.graph.nodes.map((node) => [node.kind, node.settings]));
  const graph = defaultGraph({}, JSON.parse(JSON.stringify(settings)) as GraphNode['settings']);
  const stock: GraphNode['settings'] = { lab: paper.lab, surface: paper.surface };
  const nodes = graph.nodes.map((node) => {
    if (node.kind === 'paper-stock') return { ...node, settings: stock };
    const found = given.get(node.kind);
    return found ? { ...node, settings: found } : node;
  });
  return newJob(plain.name, { ...graph, nodes }, plain.assets);
}

function withStep(job: Job, step: number | undefined): Job {
  if (step === undefined) return job;
  const nodes = job.graph.nodes.map((node) =>
    node.kind === 'match-rough' ? { ...node, settings: { ...node.settings, stepPercent: step } } : node,
  );
  return { ...job, graph: { ...job.graph, nodes } };
}

function summary({ regions, bare, fit, complaints }: Matches, folder: string): string {
  const mean = regions.reduce((sum, { distance }) => sum + distance, 0) / Math.max(1, regions.length);
  const far = regions.filter(({ outOfReach }) => outOfReach).length;
  const lines = [
    `${regions.length} regions matched, ${bare.length} not in the rough`,
    `rough laid on at ${fit.scalePercent} %, ${fit.shiftMm.join(' / ')} mm, turned ${fit.turnDeg} degrees`,
    `mean distance ${mean.toFixed(1)}, ${far} out of reach (CIEDE2000)`,
    ...complaints.map(({ severity, message }) => `${severity}: ${message}`),
    `written to ${folder}`,
  ];
  return `${lines.join('\n')}\n`;
}
