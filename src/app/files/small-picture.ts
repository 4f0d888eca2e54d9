import type { Picture } from '../../../workers/client.ts';

/** Longest side of a kept thumbnail, px. */
const LONGEST = 160;

/** A picture on a canvas no larger than `longest` either way. */
export function drawSmall(
  picture: Picture,
  longest: number,
  canvas: HTMLCanvasElement | OffscreenCanvas,
): void {
  const share = Math.min(1, longest / Math.max(picture.width, picture.height));
  canvas.width = Math.max(1, Math.round(picture.width * share));
  canvas.height = Math.max(1, Math.round(picture.height * share));
  const full = new OffscreenCanvas(picture.width, picture.height);
  full.getContext('2d')!.putImageData(new ImageData(picture.pixels, picture.width, picture.height), 0, 0);
  const context = canvas.getContext('2d') as CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;
  context.imageSmoothingQuality = 'high';
  context.drawImage(full, 0, 0, canvas.width, canvas.height);
}

/** A small proof as PNG. */
export async function pngOf(picture: Picture): Promise<Uint8Array<ArrayBuffer>> {
  const canvas = new OffscreenCanvas(1, 1);
  drawSmall(picture, LONGEST, canvas);
  return new Uint8Array(await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer());
}
