import { assetsInUse } from '../graph/assets.ts';
import type { Complaint } from '../graph/complaint.ts';
import { PROCESSES, type Press, pressSchema } from '../graph/press.ts';
import type { Report } from '../graph/report.ts';
import { pressOf } from '../press/profiles.ts';
import { readArguments, wholeOf } from './arguments.ts';
import { inColourway } from './in-colourway.ts';
import { BadUse, codeOf } from './outcome.ts';
import { readJob } from './read-job.ts';
import { readText } from './read-text.ts';
import { withEngine } from './with-engine.ts';

export const CHECK_USAGE =
  'keyblock check JOB [--press PROFILE|FILE] [--colourway NAME] [--workers N] [--json]';

const OPTIONS = {
  press: { type: 'string' },
  colourway: { type: 'string' },
  workers: { type: 'string' },
  json: { type: 'boolean', default: false },
} as const;

/** The plates are needed twice: for the report and for the check. */
const KEPT_BYTES = 1024 * 1024 * 1024;

/** What a printer would complain of in a job. Resolves to the exit code: 1 when an error is not marked as meant. */
export async function check(args: string[], about: (file: string) => void): Promise<number> {
  const { values, files } = readArguments(args, OPTIONS, 1, CHECK_USAGE);
  const workers = values.workers === undefined ? undefined : wholeOf('workers', values.workers, 1, 64);
  const press = values.press === undefined ? undefined : await pressNamed(values.press);
  about(files[0]!);
  const opened = await readJob(files[0]!, assetsInUse);
  const job = inColourway(opened.job, values.colourway);
  const report = await withEngine(
    workers,
    async (client, options): Promise<Report> => {
      for (const asset of opened.assets) await client.addAsset(asset);
      const checked = await client.run('pressCheck', { job, ...(press ? { press } : {}) }, options);
      const memory = await client.memory();
      return { ...checked.report, peakBytes: memory.processPeakBytes ?? memory.peakBytes };
    },
    KEPT_BYTES,
  );
  if (values.json) process.stdout.write(`${JSON.stringify(report)}\n`);
  else
    process.stdout.write(
      `${(press ?? job.press)?.name ?? 'no press'}\n${report.complaints.map(lineOf).join('')}`,
    );
  return codeOf(report.complaints);
}

function lineOf({ severity, message, placeMm, meant }: Complaint): string {
  const place = placeMm ? ` (at ${placeMm.map((mm) => mm.toFixed(1)).join(', ')} mm)` : '';
  return `${meant ? 'meant' : severity}: ${message}${place}\n`;
}

/** A profile by its process, or a press in a file of its own. @throws BadUse, BadInput */
async function pressNamed(name: string): Promise<Press> {
  const process = PROCESSES.find((known) => known === name);
  if (process) return pressOf(process);
  if (!name.endsWith('.json'))
    throw new BadUse(
      `--press: there is no profile "${name}"; choose among ${PROCESSES.join(', ')}, or give a .json file`,
    );
  const read = pressSchema.safeParse(JSON.parse(await readText(name)));
  if (!read.success) throw new BadUse(`--press: ${name} is no press: ${read.error.issues[0]!.message}`);
  return read.data;
}
