import { assetsInUse } from '../graph/assets.ts';
import { readArguments, wholeOf } from './arguments.ts';
import { BadUse } from './outcome.ts';
import { readJob } from './read-job.ts';
import { withEngine } from './with-engine.ts';
import { writeFiles } from './write-files.ts';

export const EDITION_USAGE =
  'keyblock edition JOB --sheets N --out DIR [--sheet K[,K...]] [--formats png,pdf] [--pdf-ppi N] [--numbered] [--seed N]';

const OPTIONS = {
  sheets: { type: 'string' },
  sheet: { type: 'string' },
  out: { type: 'string' },
  formats: { type: 'string', default: 'png' },
  'pdf-ppi': { type: 'string', default: '300' },
  numbered: { type: 'boolean', default: false },
  seed: { type: 'string', default: '1' },
} as const;

/** Sheets share everything before the press. */
const KEPT_BYTES = 1024 * 1024 * 1024;
const MOST_SHEETS = 100_000;

/** A run of sheets, each printed a little otherwise: a contact sheet, single sheets at full size, all in one PDF. */
export async function edition(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 1, EDITION_USAGE);
  if (values.out === undefined) throw new BadUse(`--out is missing. Usage: ${EDITION_USAGE}`);
  if (values.sheets === undefined) throw new BadUse(`--sheets is missing. Usage: ${EDITION_USAGE}`);
  const sheets = wholeOf('sheets', values.sheets, 1, MOST_SHEETS);
  const full = (values.sheet?.split(',') ?? []).map((text) => wholeOf('sheet', text, 1, sheets));
  const seed = wholeOf('seed', values.seed, 0, 0xffffffff);
  const formats = new Set(values.formats.split(','));
  const unknown = [...formats].find((format) => format !== 'png' && format !== 'pdf');
  if (unknown !== undefined) throw new BadUse(`--formats takes png and pdf, not "${unknown}"`);
  const pdfPpi = formats.has('pdf') ? wholeOf('pdf-ppi', values['pdf-ppi'], 20, 2400) : null;
  const contact = formats.has('png');
  about(files[0]!);
  const { job, assets } = await readJob(files[0]!, assetsInUse);
  const { files: made } = await withEngine(
    undefined,
    async (client, options) => {
      for (const asset of assets) await client.addAsset(asset);
      return client.run(
        'edition',
        { job, sheets, full, numbered: values.numbered, seed, contact, pdfPpi },
        options,
      );
    },
    KEPT_BYTES,
  );
  await writeFiles(values.out, made);
  process.stdout.write(`${made.map(({ name }) => name).join('\n')}\nwritten to ${values.out}\n`);
  return 0;
}
