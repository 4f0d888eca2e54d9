import type { Asset } from '../../../workers/client.ts';
import { unshared } from '../../graph/archive.ts';
import { assetsInUse } from '../../graph/assets.ts';
import type { Job } from '../../graph/job.ts';
import { type KeptFile, type KeptJob, whole, withVault } from './vault.ts';

/** So many jobs are kept; the oldest go first. */
const MOST_KEPT = 12;

/** What the browser is to keep: made at once, written later. */
export interface Snapshot {
  record: KeptJob;
  files: KeptFile[];
}

/** The document as it stands, on memory that a database takes. */
export function snapshotOf(
  job: Job,
  files: ReadonlyMap<string, Asset>,
  rest: Pick<KeptJob, 'id' | 'savedAt' | 'thumbnail' | 'handle' | 'inFile'>,
): Snapshot {
  const hashes = assetsInUse(job).filter((hash) => files.has(hash));
  const held = hashes.map((hash) => {
    const { name, bytes } = files.get(hash)!;
    return { hash, name, bytes: unshared(bytes) };
  });
  const record = { ...rest, name: job.name, text: JSON.stringify(job), files: hashes };
  return { record, files: held };
}

/** What goes when these jobs are kept, newest first: jobs beyond the limit, and files that no other job needs. */
export function surplus(
  jobs: readonly Pick<KeptJob, 'id' | 'files'>[],
  files: readonly string[],
): { jobs: string[]; files: string[] } {
  const needed = new Set(jobs.slice(0, MOST_KEPT).flatMap((job) => job.files));
  return {
    jobs: jobs.slice(MOST_KEPT).map(({ id }) => id),
    files: files.filter((hash) => !needed.has(hash)),
  };
}

/** Writes the document and marks it as the last one. A file that is there already is not written again. */
export function keepJob({ record, files }: Snapshot): Promise<void> {
  return withVault((vault) => {
    const work = vault.transaction(['jobs', 'files', 'state'], 'readwrite');
    const jobs = work.objectStore('jobs');
    const held = work.objectStore('files');
    const write = async () => {
      const before = await jobs.get(record.id);
      const there = new Set(await held.getAllKeys());
      for (const file of files) if (!there.has(file.hash)) await held.put(file);
      await jobs.put({ ...record, thumbnail: record.thumbnail ?? before?.thumbnail ?? null });
      await work.objectStore('state').put(record.id, 'last');
    };
    return whole(work.done, write());
  });
}

/** Drops what is kept beyond the limit. */
export function tidyVault(): Promise<void> {
  return withVault((vault) => {
    const work = vault.transaction(['jobs', 'files'], 'readwrite');
    const jobs = work.objectStore('jobs');
    const files = work.objectStore('files');
    const drop = async () => {
      const newestFirst = (await jobs.index('savedAt').getAll()).reverse();
      const gone = surplus(newestFirst, await files.getAllKeys());
      for (const id of gone.jobs) await jobs.delete(id);
      for (const hash of gone.files) await files.delete(hash);
    };
    return whole(work.done, drop());
  });
}

/** A kept job with its files; null when there is none of that id. */
export function keptJob(id: string): Promise<Snapshot | null> {
  return withVault(async (vault) => {
    const record = await vault.get('jobs', id);
    if (!record) return null;
    const files = await Promise.all(record.files.map((hash) => vault.get('files', hash)));
    return { record, files: files.filter((file) => file !== undefined) };
  });
}

/** Id of the job that was open last; null on a first visit. */
export function lastKept(): Promise<string | null> {
  return withVault(async (vault) => (await vault.get('state', 'last')) ?? null);
}

/** All kept jobs, newest first. */
export function keptJobs(): Promise<KeptJob[]> {
  return withVault(async (vault) => (await vault.getAllFromIndex('jobs', 'savedAt')).reverse());
}

/** Drops a kept job. */
export async function forgetJob(id: string): Promise<void> {
  await withVault((vault) => vault.delete('jobs', id));
  await tidyVault();
}

/** True the first time it is asked in this browser. */
export function firstTime(what: string): Promise<boolean> {
  return withVault((vault) => {
    const work = vault.transaction('state', 'readwrite');
    const look = async () => {
      if ((await work.store.get(what)) !== undefined) return false;
      await work.store.put('done', what);
      return true;
    };
    return whole(work.done, look());
  });
}
