import { numberOf, readArguments } from './arguments.ts';
import { BadUse } from './outcome.ts';
import { readJob } from './read-job.ts';
import { withEngine } from './with-engine.ts';
import { writeFiles } from './write-files.ts';

export const CHART_USAGE = 'keyblock chart JOB [--page WIDTHxHEIGHT] [--ppi N] --out DIR';

const text = { type: 'string' } as const;
const OPTIONS = {
  page: { ...text, default: '210x297' },
  ppi: { ...text, default: '600' },
  out: text,
} as const;

/** The press test form of a job's inks, and its predicted overprints and tints. Resolves to the exit code. */
export async function chart(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 1, CHART_USAGE);
  if (values.out === undefined) throw new BadUse(`--out is missing. Usage: ${CHART_USAGE}`);
  const page = pageOf(values.page);
  const ppi = numberOf('ppi', values.ppi, 72, 2400);
  about(files[0]!);
  const { job } = await readJob(files[0]!, () => []);
  const { files: made } = await withEngine(undefined, (client, options) =>
    client.run('pressForm', { job, page, ppi }, options),
  );
  await writeFiles(values.out, made);
  process.stdout.write(`${made.map(({ name }) => name).join('\n')}\nwritten to ${values.out}\n`);
  return 0;
}

function pageOf(size: string): { widthMm: number; heightMm: number } {
  const [width, height, ...rest] = size.split('x');
  if (width === undefined || height === undefined || rest.length > 0)
    throw new BadUse(`--page: write width and height in mm, such as 210x297, not "${size}"`);
  return { widthMm: numberOf('page', width, 50, 2000), heightMm: numberOf('page', height, 50, 2000) };
}
