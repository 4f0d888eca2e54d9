import { packJob } from '../../graph/archive.ts';
import { plainFileName } from '../../graph/assets.ts';
import type { Job } from '../../graph/job.ts';
import { jobStore } from '../../store/job-store.ts';
import { chooseSaveHandle, download, writeTo } from './browser-files.ts';
import { filesStore, say, sayBriefly, setFiles } from './files-store.ts';
import { files as texts } from './strings.ts';

/** Saves the job to the file it came from, or asks for one. */
export function saveJob(): Promise<void> {
  return save(filesStore.getState().handle);
}

/** Saves the job to another file. */
export function saveJobAs(): Promise<void> {
  return save(null);
}

async function save(known: FileSystemFileHandle | null): Promise<void> {
  const { job, files } = jobStore.getState();
  if (!job) return;
  const name = `${plainFileName(job.name)}.keyblock`;
  try {
    const handle = known ?? (await chooseSaveHandle(name));
    if (handle === null) return;
    const bytes = packJob(job, new Map([...files].map(([hash, asset]) => [hash, asset.bytes])));
    if (handle) await writeTo(handle, bytes);
    else download(name, bytes, 'application/zip');
    told(job, handle ?? null, handle?.name ?? name);
  } catch (error) {
    say(texts.cannotSave((error as Error).message));
  }
}

function told(job: Job, handle: FileSystemFileHandle | null, file: string): void {
  setFiles({ saved: job, handle: handle ?? filesStore.getState().handle });
  sayBriefly(texts.saved(file));
}
