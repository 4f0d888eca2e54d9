import { expect, test } from 'vitest';
import { ascii, be32 } from './make/bytes.ts';
import { exifBlock } from './make/jpeg.ts';
import { chunk, GREY, GREY_ALPHA, header, PALETTE, pixels, png, pngjsPng, RGB } from './make/png.ts';
import { read } from './read.ts';

const gamma = (value: number) => chunk('gAMA', be32(value * 100_000));
const phys = (x: number, y: number, unit: number) => chunk('pHYs', [...be32(x, y), unit]);
const greyTwo = (...chunks: Uint8Array[]) => png(header(2, 1, 8, GREY), ...chunks, pixels([0, 10, 200]));

test.each([
  ['grey', 1, [7, 200]],
  ['grey and alpha', 2, [7, 200, 9, 0]],
  ['RGB', 3, [7, 200, 9, 1, 2, 3]],
  ['RGB and alpha', 4, [7, 200, 9, 3, 1, 2, 3, 0]],
] as const)('reads %s as another program wrote it', async (_, bands, data) => {
  const picture = await read(pngjsPng(2, 1, bands, [...data]));
  expect(picture).toMatchObject({
    format: 'png',
    width: 2,
    height: 1,
    bands,
    ppi: null,
    sizeMm: null,
    notes: [],
  });
  expect(picture.pixels).toEqual(data);
});

test('keeps a black line on transparency apart from its paper', async () => {
  const { bands, pixels } = await read(pngjsPng(2, 1, 4, [0, 0, 0, 255, 0, 0, 0, 0]));
  expect(bands).toBe(4);
  expect(pixels).toEqual([0, 0, 0, 255, 0, 0, 0, 0]);
});

test('keeps pure yellow pure', async () => {
  expect((await read(pngjsPng(1, 1, 3, [255, 255, 0]))).pixels).toEqual([255, 255, 0]);
});

test('rounds 16 bits to 8', async () => {
  const lines = [0, ...[0, 128], ...[0, 129], ...[129, 127], ...[255, 255]];
  expect((await read(png(header(4, 1, 16, GREY), pixels(lines)))).pixels).toEqual([0, 1, 129, 255]);
});

test('reads 16-bit grey with alpha', async () => {
  const lines = [0, 255, 255, 128, 0];
  expect((await read(png(header(1, 1, 16, GREY_ALPHA), pixels(lines)))).pixels).toEqual([255, 128]);
});

test('spreads 1 bit to 0 and 255', async () => {
  const { pixels: spread } = await read(png(header(8, 1, 1, GREY), pixels([0, 0b1010_0000])));
  expect(spread).toEqual([255, 0, 255, 0, 0, 0, 0, 0]);
});

test('reads a palette, and its transparency', async () => {
  const palette = chunk('PLTE', [1, 2, 3, 4, 5, 6]);
  const lines = pixels([0, 0b0100_0000]);
  const opaque = await read(png(header(2, 1, 2, PALETTE), palette, lines));
  expect(opaque.pixels).toEqual([4, 5, 6, 1, 2, 3]);
  const seeThrough = await read(png(header(2, 1, 2, PALETTE), palette, chunk('tRNS', [9]), lines));
  expect(seeThrough.pixels).toEqual([4, 5, 6, 255, 1, 2, 3, 9]);
});

test('makes the one transparent colour transparent', async () => {
  const { pixels: seen } = await read(
    png(header(2, 1, 8, GREY), chunk('tRNS', [0, 10]), pixels([0, 10, 20])),
  );
  expect(seen).toEqual([10, 0, 20, 255]);
});

test('reads an interlaced picture in its order', async () => {
  const passes = [0, 10, 0, 20, 0, 30, 40];
  expect((await read(png(header(2, 2, 8, GREY, 1), pixels(passes)))).pixels).toEqual([10, 20, 30, 40]);
});

test('turns linear light into the sRGB curve, at 8 and 16 bits', async () => {
  const eight = png(header(3, 1, 8, GREY), gamma(1), pixels([0, 0, 128, 255]));
  expect((await read(eight)).pixels).toEqual([0, 188, 255]);
  const sixteen = png(header(2, 1, 16, GREY), gamma(1), pixels([0, 1, 0, 128, 128]));
  expect((await read(sixteen)).pixels).toEqual([13, 188]);
});

test('leaves alpha alone where a gamma bends colour', async () => {
  const file = png(header(1, 1, 8, GREY_ALPHA), gamma(1), pixels([0, 128, 128]));
  expect((await read(file)).pixels).toEqual([188, 128]);
});

test('leaves colours alone where the gamma is only the usual stand-in for sRGB', async () => {
  expect((await read(greyTwo(gamma(0.45455)))).pixels).toEqual([10, 200]);
});

test.each(['sRGB', 'iCCP', 'cICP'])('lets %s overrule a gamma', async (type) => {
  const data = { sRGB: [0], iCCP: [...ascii('p'), 0, 0, 1], cICP: [1, 13, 0, 1] }[type]!;
  expect((await read(greyTwo(gamma(1), chunk(type, data)))).pixels).toEqual([10, 200]);
});

test('tells the pixels per inch of pHYs', async () => {
  const { ppi } = await read(greyTwo(phys(23622, 11811, 1)));
  expect(ppi!.x).toBeCloseTo(599.9988, 6);
  expect(ppi!.y).toBeCloseTo(299.9994, 6);
});

test('takes a pHYs without unit, or of nought, for no statement', async () => {
  expect((await read(greyTwo(phys(600, 600, 0)))).ppi).toBeNull();
  expect((await read(greyTwo(phys(0, 0, 1)))).ppi).toBeNull();
});

test('obeys an EXIF block', async () => {
  const picture = await read(greyTwo(chunk('eXIf', exifBlock(6, 300, 2))));
  expect(picture).toMatchObject({ width: 1, height: 2, ppi: { x: 600, y: 300 }, pixels: [10, 200] });
});

test('says that an animation stands still', async () => {
  const { notes } = await read(greyTwo(chunk('acTL', be32(1, 0))));
  expect(notes).toEqual([expect.stringContaining('only its first picture')]);
});

test('is told by its first bytes, whatever its name', async () => {
  expect((await read(png(header(1, 1, 8, RGB), pixels([0, 1, 2, 3])))).format).toBe('png');
});
