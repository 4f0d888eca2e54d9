import type { Client, TaskOptions } from '../../../workers/client.ts';
import { unshared } from '../../graph/archive.ts';
import type { Complaint } from '../../graph/complaint.ts';
import type { Job } from '../../graph/job.ts';
import type { Report } from '../../graph/report.ts';

/** Plates as PNG and grey PDF, the proof and the report, in one ZIP; its files are compressed already. */
export async function pressZip(
  client: Client,
  job: Job,
  options: TaskOptions,
): Promise<Uint8Array<ArrayBuffer>> {
  const formats = ['png', 'grey-pdf', 'proof'] as const;
  const { files, report } = await client.run('render', { job, formats, scale: 1 }, options);
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
