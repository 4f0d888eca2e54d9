import jobUrl from '../../graphs-demo/artichoke-packet.json?url';
import type { Asset } from '../../workers/client.ts';
import type { Job } from '../graph/job.ts';
import { parseJob } from '../graph/parse-job.ts';
import { nodeKinds } from '../nodes/registry.ts';

const ASSET_URLS = import.meta.glob<string>('../../graphs-demo/assets/*', {
  query: '?url',
  import: 'default',
  eager: true,
});

/** The demo job with its files. */
export async function demoJob(): Promise<{ job: Job; assets: Asset[] }> {
  const job = parseJob(await (await fetch(jobUrl)).text(), nodeKinds);
  const assets = Object.values(job.assets).map(async ({ file }) => {
    const response = await fetch(ASSET_URLS[`../../graphs-demo/assets/${file}`]!);
    return { name: file, bytes: new Uint8Array(await response.arrayBuffer()) };
  });
  return { job, assets: await Promise.all(assets) };
}
