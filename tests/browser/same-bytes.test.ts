import { afterEach, describe, expect, it } from 'vitest';
import { commands } from 'vitest/browser';
import { demoJob } from '../../src/app/demo-job.ts';
import type { Job } from '../../src/graph/job.ts';
import { type Client, startEngine } from '../../workers/client.ts';

/** CASES 22: browser or Node, one worker or many: identical files, grain and proof included. */
describe('the demo in the browser', () => {
  let client: Client;

  afterEach(() => client.close());

  async function rendered(workers: number, colourway: string): Promise<Record<string, string>> {
    const { job, assets } = await demoJob();
    client = await startEngine({ workers });
    for (const asset of assets) await client.addAsset(asset);
    const inColourway: Job = { ...job, colourway };
    const { files } = await client.run('render', { job: inColourway, formats: ['png', 'proof'], scale: 1 });
    return Object.fromEntries(files.map(({ name, bytes }) => [name, base64(bytes)]));
  }

  it.each([
    { workers: 1, colourway: 'a' },
    { workers: 3, colourway: 'b' },
  ])('gives the bytes that Node gives, with $workers workers', async ({ workers, colourway }) => {
    const here = await rendered(workers, colourway);
    const job = 'graphs-demo/artichoke-packet.json';
    const { 'report.json': _, ...there } = await commands.renderInNode(job, '--colourway', colourway);
    expect(Object.keys(here).sort()).toEqual(Object.keys(there).sort());
    expect(Object.keys(here)).toHaveLength(4);
    for (const [name, bytes] of Object.entries(there)) expect(here[name] === bytes, name).toBe(true);
  });
});

function base64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 32_768)
    text += String.fromCharCode(...bytes.subarray(at, at + 32_768));
  return btoa(text);
}
