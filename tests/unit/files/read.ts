import { decodePicture } from '../../../workers/files/decode.ts';
import { inspectPicture, type PictureHead } from '../../../workers/files/inspect.ts';

/** Inspects and decodes a picture, as an import does. */
export async function read(
  bytes: Uint8Array,
  options: { vectorPpi: number; widthMm?: number } = { vectorPpi: 600 },
): Promise<PictureHead & { pixels: number[] }> {
  const head = await inspectPicture(bytes, 'beans', options);
  const target = new Uint8Array(new SharedArrayBuffer(head.width * head.height * head.bands));
  await decodePicture(bytes, 'beans', head, target);
  return { ...head, pixels: [...target] };
}
