import { BadFile } from '../../workers/files/bad-file.ts';
import { decodePicture } from '../../workers/files/decode.ts';
import { encodePng } from '../../workers/files/encode-png.ts';
import { inspectPicture } from '../../workers/files/inspect.ts';

const BACK_AND_FORTH = Uint8Array.of(0, 64, 128, 255, 255, 0);
const SVG =
  '<svg xmlns="http://www.w3.org/2000/svg" width="2in" height="1in"><path d="M0 0h96v96h-96z" fill="red" fill-opacity=".5"/></svg>';

async function png() {
  const bytes = await encodePng({ width: 3, height: 2, bands: 1, data: BACK_AND_FORTH, ppi: 600 });
  const head = await inspectPicture(bytes, 'a.png', { vectorPpi: 600 });
  const pixels = new Uint8Array(new SharedArrayBuffer(6));
  await decodePicture(bytes, 'a.png', head, pixels);
  return { ppi: head.ppi, pixels: [...pixels], file: [...bytes] };
}

async function svg() {
  const bytes = new TextEncoder().encode(SVG);
  const head = await inspectPicture(bytes, 'a.svg', { vectorPpi: 2 });
  const pixels = new Uint8Array(new SharedArrayBuffer(head.width * head.height * 4));
  await decodePicture(bytes, 'a.svg', head, pixels);
  return { sizeMm: head.sizeMm, pixels: [...pixels] };
}

async function broken() {
  const bytes = await encodePng({ width: 3, height: 2, bands: 1, data: BACK_AND_FORTH, ppi: 600 });
  try {
    await inspectPicture(bytes.subarray(0, bytes.length - 9), 'cut.png', { vectorPpi: 600 });
    return null;
  } catch (error) {
    return error instanceof BadFile ? error.message : String(error);
  }
}

export type Answer = {
  png: Awaited<ReturnType<typeof png>>;
  svg: Awaited<ReturnType<typeof svg>>;
  broken: string | null;
};

self.onmessage = async () => {
  const answer: Answer = { png: await png(), svg: await svg(), broken: await broken() };
  self.postMessage(answer);
};
