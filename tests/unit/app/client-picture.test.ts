import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hashBytes } from '../../../src/graph/keys.ts';
import { type Client, startEngine } from '../../../workers/client.ts';
import { linePng, readPng } from '../support/files.ts';
import { defaultJob, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

/** A frame on a sheet of 400 x 200 px at 200 ppi: bare outside it, one region inside. */
const FRAME = linePng(
  drawnPlane(400, 200, (x, y) => {
    const inward = Math.min(x - 100, 299 - x, y - 50, 149 - y);
    return inward >= 0 && inward < 6 ? 255 : 0;
  }),
);
const job = withRecipes(
  withSettings(defaultJob({ asset: hashBytes(FRAME), ppi: 200 }), { 'plate-grain': { strengthPercent: 0 } }),
  { r2: { brick: 100 } },
);

let client: Client;
beforeAll(async () => {
  client = await startEngine({ workers: 1 });
  await client.addAsset({ name: 'frame.png', bytes: FRAME });
});
afterAll(() => client.close());

async function picture(widthPx: number, ground: 'paper' | 'none') {
  const { files, width, height } = await client.run('clientPicture', { job, widthPx, ground });
  const read = readPng(files[0]!.bytes);
  const at = (x: number, y: number) => [...read.data.slice((y * width + x) * 4, (y * width + x) * 4 + 4)];
  return { bytes: files[0]!.bytes, width, height, at };
}

describe('a picture for the client', () => {
  it('is as wide as wished, in proportion, and tagged sRGB', async () => {
    const { width, height, bytes } = await picture(100, 'paper');
    expect([width, height]).toEqual([100, 50]);
    expect(new TextDecoder('latin1').decode(bytes.slice(0, 120))).toContain('sRGB');
  });

  it('is never larger than the print', async () => {
    expect((await picture(5000, 'paper')).width).toBe(400);
  });

  it('shows the paper, or leaves it clear', async () => {
    const onPaper = await picture(100, 'paper');
    const alone = await picture(100, 'none');
    expect(onPaper.at(4, 4)[3]).toBe(255);
    expect(alone.at(4, 4)[3]).toBe(0);
  });

  it('gives the print back when it is laid over the colour of the paper', async () => {
    const alone = await picture(100, 'none');
    const flat = withSettings(job, { 'paper-stock': { toothPercent: 0, fibresPercent: 0 } });
    const proof = await client.run('picture', { job: flat, show: { view: 'proof' }, scale: 1 });
    const paper = [...proof.pixels.slice(0, 3)];
    const inside = (100 * proof.width + 200) * 4;
    const [r, g, b, a] = alone.at(50, 25) as [number, number, number, number];
    const laid = [r, g, b].map((value, c) => (value * a + paper[c]! * (255 - a)) / 255);
    for (let c = 0; c < 3; c++) expect(Math.abs(laid[c]! - proof.pixels[inside + c]!)).toBeLessThan(1.5);
  });
});
