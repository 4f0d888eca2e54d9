import { expect, test } from 'vitest';
import type { Answer } from './files.worker.ts';

function ask(): Promise<Answer> {
  const worker = new Worker(new URL('./files.worker.ts', import.meta.url), { type: 'module' });
  return new Promise<Answer>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Answer>) => resolve(data);
    worker.onerror = (event) => reject(new Error(event.message));
    worker.postMessage('go');
  }).finally(() => worker.terminate());
}

test('a worker of the page writes and reads pictures as Node does', async () => {
  const answer = await ask();
  expect(answer.png.ppi?.x).toBeCloseTo(600, 2);
  expect(answer.png.pixels).toEqual([0, 64, 128, 255, 255, 0]);
  expect(answer.svg.sizeMm?.map((mm) => Math.round(mm * 10) / 10)).toEqual([50.8, 25.4]);
  const redLeft = [255, 0, 0, 128, 255, 0, 0, 128, 0, 0, 0, 0, 0, 0, 0, 0];
  expect(answer.svg.pixels).toEqual([...redLeft, ...redLeft]);
  expect(answer.broken).toMatch(/^cut\.png: the file ends early/);
});
