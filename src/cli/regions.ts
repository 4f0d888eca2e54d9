import { basename } from 'node:path';
import { readArguments } from './arguments.ts';
import { drawingJob, SIZE_OPTIONS } from './drawing-job.ts';
import { BadUse, codeOf } from './outcome.ts';
import { withEngine } from './with-engine.ts';
import { jsonFile, writeFiles } from './write-files.ts';

export const REGIONS_USAGE =
  'keyblock regions DRAWING [--gap MM] [--smallest MM2] [--tuck MM] [--roughness MM] [--speck MM2] [--width MM] [--ppi N] --out DIR [--json]';

const text = { type: 'string' } as const;
const OPTIONS = {
  gap: text,
  smallest: text,
  tuck: text,
  roughness: text,
  speck: text,
  ...SIZE_OPTIONS,
  out: text,
  json: { type: 'boolean', default: false },
} as const;

/** Label picture and table of a drawing's regions. Resolves to the exit code. */
export async function regions(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 1, REGIONS_USAGE);
  const folder = values.out;
  if (folder === undefined) throw new BadUse(`--out is missing. Usage: ${REGIONS_USAGE}`);
  const path = files[0]!;
  about(path);
  const { job, bytes } = await drawingJob(path, values);
  const { files: made, found } = await withEngine(undefined, async (client, options) => {
    await client.addAsset({ name: basename(path), bytes });
    return client.run('regions', { job }, options);
  });
  await writeFiles(folder, [...made, jsonFile('regions.json', found)]);
  const { width, height, mm } = found.drawing;
  if (values.json) process.stdout.write(`${JSON.stringify(found)}\n`);
  else
    process.stdout.write(
      `${found.regions.length} regions, ${width} x ${height} px, ${mm.join(' x ')} mm\n` +
        `${found.walls.length} openings closed, ${found.openGaps.length} wider than the gap left open\n` +
        `written to ${folder}\n`,
    );
  return codeOf(found.complaints);
}
