import { Cancelled, type Client, type Picture, startEngine } from '../../workers/client.ts';
import type { Job } from '../graph/job.ts';
import { demoJob } from './demo-job.ts';

/** Coarse first, then as fine as every tablet's canvas can hold. */
const SCALES = [8, 2];

function byId<Type extends HTMLElement>(id: string): Type {
  return document.getElementById(id) as Type;
}

const say = (text: string) => {
  byId('status').textContent = text;
};

function show(picture: Picture): void {
  const canvas = byId<HTMLCanvasElement>('proof');
  canvas.width = picture.width;
  canvas.height = picture.height;
  const context = canvas.getContext('2d')!;
  context.putImageData(new ImageData(picture.pixels, picture.width, picture.height), 0, 0);
}

/** Shows one colourway, first coarse, then fine; the promise settles when the fine one stands. */
async function proofOf(client: Client, job: Job, signal: AbortSignal): Promise<void> {
  const started = performance.now();
  for (const scale of SCALES) {
    const onProgress = ({ node, done, of }: { node: string; done: number; of: number }) =>
      say(`${done + 1} of ${of}: ${node}`);
    show(await client.run('picture', { job, show: { view: 'proof' }, scale }, { onProgress, signal }));
    document.body.dataset.scale = String(scale);
  }
  say(`Proof in ${((performance.now() - started) / 1000).toFixed(1)} s`);
}

function offerColourways(job: Job, choose: (id: string) => void): void {
  const buttons = job.colourways.map(({ id, name }) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = name;
    button.ariaPressed = String(id === job.colourway);
    button.addEventListener('click', () => {
      for (const other of buttons) other.ariaPressed = String(other === button);
      choose(id);
    });
    return button;
  });
  byId('colourways').replaceChildren(...buttons);
}

async function main(): Promise<void> {
  if (!crossOriginIsolated)
    throw new Error(
      'This page needs shared memory: its host must send the headers Cross-Origin-Opener-Policy: same-origin and Cross-Origin-Embedder-Policy: require-corp.',
    );
  const { job, assets } = await demoJob();
  byId('job').textContent = job.name;
  const client = await startEngine();
  await Promise.all(assets.map((asset) => client.addAsset(asset)));

  const cancel = byId<HTMLButtonElement>('cancel');
  let running = new AbortController();
  cancel.addEventListener('click', () => running.abort());
  const choose = async (colourway: string) => {
    running.abort();
    const mine = new AbortController();
    running = mine;
    cancel.hidden = false;
    try {
      await proofOf(client, { ...job, colourway }, mine.signal);
    } catch (error) {
      if (running === mine) say(error instanceof Cancelled ? 'Cancelled' : (error as Error).message);
    } finally {
      if (running === mine) cancel.hidden = true;
    }
  };
  offerColourways(job, choose);
  await choose(job.colourway);
}

main().catch((error: Error) => say(error.message));
