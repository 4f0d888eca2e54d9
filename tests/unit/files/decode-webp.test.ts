import { expect, test } from 'vitest';
import { loadVips } from '../../../workers/files/vips.ts';
import { exifBlock } from './make/jpeg.ts';
import { canvas, losslessData, riffChunk, webp } from './make/webp.ts';
import { read } from './read.ts';

const CORNERS = [false, true, true, true];
const opaque = losslessData(2, 2, [10, 200], { red: 5, blue: 6, alpha: 255 }, CORNERS);
const clear = losslessData(2, 2, [10, 200], { red: 5, blue: 6, alpha: 77 }, CORNERS);
const PIXELS = [5, 10, 6, 5, 200, 6, 5, 200, 6, 5, 200, 6];

function frame(data: Uint8Array): Uint8Array {
  return riffChunk('ANMF', [
    ...[0, 0, 0, 0, 0, 0],
    ...[1, 0, 0, 1, 0, 0],
    100,
    0,
    0,
    0,
    ...riffChunk('VP8L', data),
  ]);
}

test('reads a lossless picture, top row first', async () => {
  const picture = await read(webp(riffChunk('VP8L', opaque)));
  expect(picture).toMatchObject({ format: 'webp', width: 2, height: 2, bands: 3, ppi: null, notes: [] });
  expect(picture.pixels).toEqual(PIXELS);
});

test('keeps alpha straight', async () => {
  const { bands, pixels } = await read(webp(riffChunk('VP8L', clear)));
  expect(bands).toBe(4);
  expect(pixels.slice(0, 8)).toEqual([5, 10, 6, 77, 5, 200, 6, 77]);
});

test('fills in the alpha that a canvas promises and its picture lacks', async () => {
  const { pixels } = await read(webp(canvas(16, 2, 2), riffChunk('VP8L', opaque)));
  expect(pixels.slice(0, 4)).toEqual([5, 10, 6, 255]);
});

test('obeys an EXIF block behind the picture', async () => {
  const file = webp(canvas(8, 2, 2), riffChunk('VP8L', opaque), riffChunk('EXIF', exifBlock(3, 300, 2)));
  const { ppi, pixels } = await read(file);
  expect(ppi).toEqual({ x: 300, y: 600 });
  expect(pixels).toEqual([...PIXELS.slice(9), ...PIXELS.slice(3, 9), ...PIXELS.slice(0, 3)]);
});

test('reads the first picture of an animation, and says so', async () => {
  const file = webp(canvas(2, 2, 2), riffChunk('ANIM', [0, 0, 0, 0, 0, 0]), frame(opaque), frame(clear));
  const picture = await read(file);
  expect(picture.notes).toEqual(['it is animated; only its first picture is read']);
  expect(picture.pixels.slice(0, 8)).toEqual([5, 10, 6, 255, 5, 200, 6, 255]);
});

test('reads a lossy picture', async () => {
  const vips = await loadVips();
  const image = vips.Image.newFromMemory(
    new Uint8Array(16 * 9 * 3).fill(90),
    16,
    9,
    3,
    vips.BandFormat.uchar,
  );
  const file = image.webpsaveBuffer({ Q: 90, keep: 'none' }).slice();
  image.delete();
  const picture = await read(file);
  expect(picture).toMatchObject({ width: 16, height: 9, bands: 3 });
  expect(Math.max(...picture.pixels.map((value) => Math.abs(value - 90)))).toBeLessThan(3);
});
