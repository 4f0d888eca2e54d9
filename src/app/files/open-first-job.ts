import { hashBytes } from '../../graph/keys.ts';
import { demoJob } from '../demo-job.ts';
import { say } from './files-store.ts';
import { lastKept } from './keep.ts';
import { openDocument } from './open-document.ts';
import { openKept } from './open-kept.ts';
import { files as texts } from './strings.ts';

/** Opens the job that was open last, or else the example. */
export async function openFirstJob(): Promise<void> {
  const last = await lastKept().catch(() => null);
  if (last === null) return openExample();
  try {
    if (await openKept(last)) return;
    await openExample();
  } catch {
    await openExample();
    say(texts.lostRecord);
  }
}

/** Opens the example; says so when it cannot be loaded. */
export async function openExample(): Promise<void> {
  try {
    const { job, assets } = await demoJob();
    const files = assets.map((asset) => ({ hash: hashBytes(asset.bytes), asset }));
    openDocument({ job, files, isExample: true });
  } catch {
    say(texts.noExample);
  }
}
