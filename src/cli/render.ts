import { basename } from 'node:path';
import { RENDER_FORMATS, type RenderFormat } from '../../workers/client.ts';
import { assetsInUse } from '../graph/assets.ts';
import { hashBytes } from '../graph/keys.ts';
import type { Report } from '../graph/report.ts';
import { withRough } from '../graph/with-rough.ts';
import { readArguments, wholeOf } from './arguments.ts';
import { inColourway } from './in-colourway.ts';
import { BadUse, codeOf } from './outcome.ts';
import { type OpenedJob, readBytes, readJob, withDrawing } from './read-job.ts';
import { withEngine } from './with-engine.ts';
import { jsonFile, writeFiles } from './write-files.ts';

export const RENDER_USAGE =
  'keyblock render JOB [--drawing FILE] [--rough FILE] [--colourway NAME] [--out DIR] [--formats png,grey-pdf,pdf,tiff,ora,job-sheet,proof,proof-jpeg,proof-pdf] [--workers N] [--json]';

const OPTIONS = {
  drawing: { type: 'string' },
  rough: { type: 'string' },
  colourway: { type: 'string' },
  out: { type: 'string', default: 'out' },
  formats: { type: 'string', default: 'png,proof' },
  workers: { type: 'string' },
  json: { type: 'boolean', default: false },
} as const;

/** Plates, proof and report of a job. Resolves to the exit code. */
export async function render(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 1, RENDER_USAGE);
  const formats = formatsOf(values.formats);
  const workers = values.workers === undefined ? undefined : wholeOf('workers', values.workers, 1, 64);
  about(files[0]!);
  const opened = await open(files[0]!, values.drawing, about);
  const { job: sketched, assets } = await withRoughFile(opened, values.rough, about);
  const job = inColourway(sketched, values.colourway);
  const { report, made } = await withEngine(workers, async (client, options) => {
    for (const asset of assets) await client.addAsset(asset);
    const rendered = await client.run('render', { job, formats, scale: 1, madeAt: now() }, options);
    const memory = await client.memory();
    const whole: Report = { ...rendered.report, peakBytes: memory.processPeakBytes ?? memory.peakBytes };
    return { report: whole, made: rendered.files };
  });
  await writeFiles(values.out, [...made, jsonFile('report.json', report)]);
  if (values.json) process.stdout.write(`${JSON.stringify(report)}\n`);
  else process.stdout.write(summary(report, values.out));
  return codeOf(report.complaints);
}

/** The moment that files bear: `SOURCE_DATE_EPOCH` (reproducible-builds.org) where it is set. */
function now(): string {
  const fixed = Number(process.env.SOURCE_DATE_EPOCH);
  return new Date(Number.isFinite(fixed) && fixed > 0 ? fixed * 1000 : Date.now()).toISOString();
}

async function withRoughFile(
  opened: OpenedJob,
  rough: string | undefined,
  about: (file: string) => void,
): Promise<OpenedJob> {
  if (rough === undefined) return opened;
  about(rough);
  const asset = { name: basename(rough), bytes: await readBytes(rough) };
  return {
    job: withRough(opened.job, asset.name, hashBytes(asset.bytes)),
    assets: [...opened.assets, asset],
  };
}

async function open(
  path: string,
  drawing: string | undefined,
  about: (file: string) => void,
): Promise<OpenedJob> {
  if (drawing === undefined) return readJob(path, assetsInUse);
  const { job } = await readJob(path, () => []);
  about(drawing);
  const replaced = withDrawing(job, drawing, await readBytes(drawing));
  const others = assetsInUse(replaced.job).filter((hash) => hash in job.assets);
  about(path);
  const { assets } = await readJob(path, () => others);
  about(drawing);
  return { job: replaced.job, assets: [...assets, replaced.asset] };
}

function formatsOf(text: string): RenderFormat[] {
  const names = text.split(',').map((name) => name.trim());
  return names.map((name) => {
    const format = RENDER_FORMATS.find((known) => known === name);
    if (!format)
      throw new BadUse(`--formats: there is no format "${name}"; choose among ${RENDER_FORMATS.join(', ')}`);
    return format;
  });
}

function summary(report: Report, folder: string): string {
  const { drawing, plates, regions, complaints } = report;
  const lines = [
    `${regions.length} regions, ${drawing.width} x ${drawing.height} px, ${drawing.mm.join(' x ')} mm`,
    ...plates.map((plate) => `plate ${plate.order}  ${plate.id}  ${plate.coveragePercent.toFixed(1)} %`),
    ...complaints.map(({ severity, message }) => `${severity}: ${message}`),
    `written to ${folder}`,
  ];
  return `${lines.join('\n')}\n`;
}
