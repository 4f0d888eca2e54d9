import { basename } from 'node:path';
import { assetsInUse, freshFileName, plainFileName } from '../graph/assets.ts';
import { hashBytes } from '../graph/keys.ts';
import type { Carry } from '../graph/redraw.ts';
import { numberOf, readArguments } from './arguments.ts';
import { BadUse, codeOf } from './outcome.ts';
import { readBytes, readJob } from './read-job.ts';
import { withEngine } from './with-engine.ts';
import { jsonFile, writeFiles } from './write-files.ts';

export const REDRAW_USAGE = 'keyblock redraw JOB --drawing NEW --out DIR [--width MM] [--ppi N] [--json]';

const text = { type: 'string' } as const;
const OPTIONS = {
  drawing: text,
  out: text,
  width: text,
  ppi: text,
  json: { type: 'boolean', default: false },
} as const;

/** A job with changed lines: what hangs on its regions is carried over. Resolves to the exit code. */
export async function redraw(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 1, REDRAW_USAGE);
  if (values.drawing === undefined || values.out === undefined)
    throw new BadUse(`--drawing and --out are needed. Usage: ${REDRAW_USAGE}`);
  const widthMm = values.width === undefined ? undefined : numberOf('width', values.width, 1, 5000);
  const ppi = values.ppi === undefined ? undefined : numberOf('ppi', values.ppi, 20, 12_000);
  about(files[0]!);
  const { job, assets } = await readJob(files[0]!, assetsInUse);
  about(values.drawing);
  const bytes = await readBytes(values.drawing);
  const hash = hashBytes(bytes);
  const taken = Object.entries(job.assets).flatMap(([other, { file }]) => (other === hash ? [] : [file]));
  const drawing = { hash, file: freshFileName(plainFileName(basename(values.drawing)), taken) };
  const { job: next, carry } = await withEngine(undefined, async (client, options) => {
    for (const asset of assets) await client.addAsset(asset);
    await client.addAsset({ name: drawing.file, bytes });
    return client.run('redraw', { job, drawing, widthMm, ppi }, options);
  });
  const held = new Map([
    ...assets.map((asset) => [hashBytes(asset.bytes), asset.bytes] as const),
    [hash, bytes],
  ]);
  const needed = assetsInUse(next).filter((each) => held.has(each));
  const kept = needed.map((each) => ({ name: `assets/${next.assets[each]!.file}`, bytes: held.get(each)! }));
  await writeFiles(values.out, [...kept, jsonFile('carry.json', carry), jsonFile('job.json', next)]);
  process.stdout.write(values.json ? `${JSON.stringify(carry)}\n` : summary(carry, values.out));
  return codeOf(carry.complaints);
}

function summary({ regions, transform, complaints }: Carry, folder: string): string {
  const counts = new Map<string, number>();
  for (const { state } of regions) counts.set(state, (counts.get(state) ?? 0) + 1);
  const told = [...counts].map(([state, count]) => `${count} ${state}`).join(', ');
  const lines = [
    told,
    `the old drawing lies at ${transform.scale} times its size, ${transform.shiftMm.join(' / ')} mm, turned ${transform.turnDeg} degrees`,
    ...complaints.map(({ severity, message }) => `${severity}: ${message}`),
    `written to ${folder}`,
  ];
  return `${lines.join('\n')}\n`;
}
