import type { Client, RenderFormat, TaskOptions } from '../../../workers/client.ts';
import { unshared } from '../../graph/archive.ts';
import type { Complaint } from '../../graph/complaint.ts';
import type { Job } from '../../graph/job.ts';
import type { Report } from '../../graph/report.ts';

/** What is delivered when nobody has chosen. */
export const USUAL_FORMATS: readonly RenderFormat[] = ['png', 'grey-pdf', 'proof'];

/** Files for the press and the report, in one ZIP; its files are compressed already. */
export async function pressZip(
  client: Client,
  job: Job,
  formats: readonly RenderFormat[],
  options: TaskOptions,
): Promise<Uint8Array<ArrayBuffer>> {
  const madeAt = new Date().toISOString();
  const { files, report } = await client.run('render', { job, formats, scale: 1, madeAt }, options);
  const memory = await client.memory();
  const whole: Report = { ...report, peakBytes: memory.processPeakBytes ?? memory.peakBytes };
  const text = new TextEncoder().encode(`${JSON.stringify(whole, null, 2)}\n`);
  const packed = await client.run(
    'zip',
    { files: [...files, { name: 'report.json', bytes: text }] },
    options,
  );
  return unshared(packed.files[0]!.bytes);
}

/** What is wrong, the errors first, each once; notes are left out. */
export function faultsOf(lists: readonly (readonly Complaint[] | undefined)[]): Complaint[] {
  const found = new Map<string, Complaint>();
  for (const complaint of lists.flatMap((list) => list ?? []))
    if (complaint.severity !== 'note') found.set(complaint.message, complaint);
  const all = [...found.values()];
  const errors = all.filter(({ severity }) => severity === 'error');
  return [...errors, ...all.filter(({ severity }) => severity === 'warning')];
}
