import { hashBytes } from '../../graph/keys.ts';
import { openJob } from '../../store/job-store.ts';
import { demoJob } from '../demo-job.ts';

/** Opens the demo. */
export async function openFirstJob(): Promise<void> {
  const { job, assets } = await demoJob();
  openJob(
    job,
    assets.map((asset) => ({ hash: hashBytes(asset.bytes), asset })),
  );
}
