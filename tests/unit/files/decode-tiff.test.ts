import { expect, test } from 'vitest';
import { blackCornerG4, deflate, plainLzw, type Tags, tiff, withPage } from './make/tiff.ts';
import { read } from './read.ts';

const GREY: Tags = { 258: [8], 259: [1], 262: [1] };
const RGBA: Tags = { 258: [8, 8, 8, 8], 259: [1], 262: [2], 277: [4] };
const CMYK: Tags = { 258: [8, 8, 8, 8], 259: [1], 262: [5], 277: [4] };
const RAMP = Array.from({ length: 256 }, (_, i) => i * 257);

test('reads grey and its resolution', async () => {
  const picture = await read(
    tiff(2, 2, [0, 50, 100, 255], { ...GREY, 282: [600, 1], 283: [1200, 1], 296: [2] }),
  );
  expect(picture).toMatchObject({ format: 'tiff', width: 2, height: 2, bands: 1, notes: [] });
  expect(picture.ppi).toEqual({ x: 600, y: 1200 });
  expect(picture.pixels).toEqual([0, 50, 100, 255]);
});

test('counts a resolution in inches unless centimetres are named, and none without unit', async () => {
  const ppi = async (tags: Tags) => (await read(tiff(1, 1, [0], { ...GREY, ...tags }))).ppi;
  expect(await ppi({ 282: [300, 1], 283: [300, 1] })).toEqual({ x: 300, y: 300 });
  expect(await ppi({ 282: [100, 1], 283: [100, 1], 296: [3] })).toEqual({ x: 254, y: 254 });
  expect(await ppi({ 282: [300, 1], 283: [300, 1], 296: [1] })).toBeNull();
  expect(await ppi({ 282: [300, 0], 283: [300, 0] })).toBeNull();
  expect(await ppi({})).toBeNull();
});

test.each([
  ['1 bit, black is 0', { 258: [1], 262: [1] }, 8, [0b1010_0000], [255, 0, 255, 0, 0, 0, 0, 0]],
  ['1 bit, white is 0', { 258: [1], 262: [0] }, 8, [0b1010_0000], [0, 255, 0, 255, 255, 255, 255, 255]],
  ['4 bits', { 258: [4], 262: [1] }, 4, [0x0f, 0x28], [0, 255, 34, 136]],
  ['8 bits, white is 0', { 258: [8], 262: [0] }, 3, [0, 50, 255], [255, 205, 0]],
  ['16 bits', { 258: [16], 262: [1] }, 3, [128, 0, 129, 0, 255, 255], [0, 1, 255]],
  ['16 bits, white is 0', { 258: [16], 262: [0] }, 2, [0, 0, 255, 255], [255, 0]],
])('reads grey of %s', async (_, tags, width, strip, wanted) => {
  expect((await read(tiff(width, 1, strip, { 259: [1], ...tags }))).pixels).toEqual(wanted);
});

test('unpacks LZW and ZIP', async () => {
  const data = [1, 2, 3, 250];
  expect((await read(tiff(2, 2, plainLzw(data), { ...GREY, 259: [5] }))).pixels).toEqual(data);
  expect((await read(tiff(2, 2, deflate(data), { ...GREY, 259: [8] }))).pixels).toEqual(data);
});

test('unpacks fax G4 with its black at the top left', async () => {
  const { pixels } = await read(tiff(8, 8, blackCornerG4(), { 258: [1], 259: [4], 262: [0] }));
  expect(pixels).toEqual(Array.from({ length: 64 }, (_, i) => (i % 8 < 4 && i < 32 ? 0 : 255)));
});

test('takes CMYK as (1-C)(1-K), black being black', async () => {
  const inks = [...[0, 0, 0, 255], ...[255, 0, 0, 0], ...[0, 128, 0, 128]];
  const { bands, pixels } = await read(tiff(3, 1, inks, CMYK));
  expect(bands).toBe(3);
  expect(pixels).toEqual([...[0, 0, 0], ...[0, 255, 255], ...[127, 63, 127]]);
});

test('keeps the alpha of CMYK', async () => {
  const tags = { ...CMYK, 258: [8, 8, 8, 8, 8], 277: [5], 338: [2] };
  expect((await read(tiff(1, 1, [0, 255, 0, 0, 128], tags))).pixels).toEqual([255, 0, 255, 128]);
});

test('reads a palette in colour and in grey', async () => {
  const palette = (green: number[]) => ({ 258: [8], 259: [1], 262: [3], 320: [...RAMP, ...green, ...RAMP] });
  const coloured = await read(tiff(2, 1, [3, 200], palette(RAMP.toReversed())));
  expect(coloured.pixels).toEqual([3, 252, 3, 200, 55, 200]);
  const grey = await read(tiff(2, 1, [3, 200], palette(RAMP)));
  expect(grey).toMatchObject({ bands: 3, pixels: [3, 3, 3, 200, 200, 200] });
});

test('takes alpha out of colours it was multiplied into', async () => {
  const { pixels } = await read(tiff(2, 1, [64, 0, 128, 128, 0, 0, 0, 0], { ...RGBA, 338: [1] }));
  expect(pixels).toEqual([127, 0, 255, 128, 0, 0, 0, 0]);
});

test('keeps straight alpha', async () => {
  expect((await read(tiff(1, 1, [64, 0, 32, 128], { ...RGBA, 338: [2] }))).pixels).toEqual([64, 0, 32, 128]);
});

test('leaves out a channel that is not alpha, and says so', async () => {
  const picture = await read(tiff(1, 1, [64, 0, 32, 128], { ...RGBA, 338: [0] }));
  expect(picture).toMatchObject({ bands: 3, pixels: [64, 0, 32] });
  expect(picture.notes).toEqual([expect.stringContaining('not read')]);
});

test('sets a page upright with its resolution', async () => {
  const picture = await read(tiff(2, 1, [3, 200], { ...GREY, 274: [8], 282: [600, 1], 283: [300, 1] }));
  expect(picture).toMatchObject({ width: 1, height: 2, ppi: { x: 300, y: 600 }, pixels: [200, 3] });
});

test('reads the first of two pages, and says so', async () => {
  const second = { ...GREY, 256: [1], 257: [1], 273: [8], 278: [1], 279: [1] };
  const picture = await read(withPage(tiff(2, 1, [3, 200], GREY), second));
  expect(picture.pixels).toEqual([3, 200]);
  expect(picture.notes).toEqual(['it holds 2 pages; only the first is read']);
});

test('does not count a thumbnail as a page', async () => {
  const thumbnail = { ...GREY, 254: [1], 256: [1], 257: [1], 273: [8], 278: [1], 279: [1] };
  expect((await read(withPage(tiff(2, 1, [3, 200], GREY), thumbnail))).notes).toEqual([]);
});
