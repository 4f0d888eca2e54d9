import { readFileSync } from 'node:fs';
import { decodePicture } from '../../workers/files/decode.ts';
import { inspectPicture } from '../../workers/files/inspect.ts';
import { coverage, PLAIN } from '../../workers/kernels/coverage.ts';
import type { Plane } from '../../workers/kernels/plane.ts';

export function sharedPlane(width: number, height: number): Plane {
  return { width, height, data: new Uint8Array(new SharedArrayBuffer(width * height)) };
}

export function sharedLabels(pixels: number): Uint32Array<SharedArrayBuffer> {
  return new Uint32Array(new SharedArrayBuffer(pixels * 4));
}

const DEMO = new URL('../../graphs-demo/assets/artichoke-packet.svg', import.meta.url);

/** Line coverage of the demo's drawing at `ppi`; 600 makes 4000 x 5000 px. */
export async function demoLine(ppi: number): Promise<Plane> {
  const bytes = new Uint8Array(readFileSync(DEMO));
  const head = await inspectPicture(bytes, 'demo', { vectorPpi: ppi });
  const pixels = new Uint8Array(head.width * head.height * head.bands);
  await decodePicture(bytes, 'demo', head, pixels);
  const line = sharedPlane(head.width, head.height);
  coverage({ pixels, bands: head.bands, reading: PLAIN, line }, 0, head.height);
  return line;
}

/** The same picture `times` over, each way. */
export function tiled(from: Plane, times: number): Plane {
  const to = sharedPlane(from.width * times, from.height * times);
  for (let y = 0; y < to.height; y++) {
    const row = (y % from.height) * from.width;
    for (let k = 0; k < times; k++)
      to.data.set(from.data.subarray(row, row + from.width), y * to.width + k * from.width);
  }
  return to;
}
