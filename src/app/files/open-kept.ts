import type { Asset } from '../../../workers/client.ts';
import { parseJob } from '../../graph/parse-job.ts';
import { nodeKinds } from '../../nodes/registry.ts';
import { keptJob } from './keep.ts';
import { openDocument } from './open-document.ts';

/** Opens a job that the browser keeps. False when it keeps none of that id. @throws BadInput */
export async function openKept(id: string): Promise<boolean> {
  const kept = await keptJob(id);
  if (!kept) return false;
  const { text, handle, inFile } = kept.record;
  const job = parseJob(text, nodeKinds);
  const files = kept.files.map(({ hash, name, bytes }) => ({ hash, asset: { name, bytes } satisfies Asset }));
  openDocument({ job, files, id, handle, inFile });
  return true;
}
