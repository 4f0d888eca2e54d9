import { expect, test } from 'vitest';
import { concat } from './make/bytes.ts';
import { adobe, exif, jfif, jpeg } from './make/jpeg.ts';
import { read } from './read.ts';

const TWO = [[[10], [200]]];

/** The first pixel of each 8 x 8 block, row by row. */
function blocks(picture: { width: number; height: number; bands: number; pixels: number[] }): number[][] {
  const found: number[][] = [];
  for (let y = 0; y < picture.height; y += 8) {
    for (let x = 0; x < picture.width; x += 8) {
      const at = (y * picture.width + x) * picture.bands;
      found.push(picture.pixels.slice(at, at + picture.bands));
    }
  }
  return found;
}

test('reads grey, top row first', async () => {
  const picture = await read(
    jpeg([
      [[0], [200]],
      [[255], [77]],
    ]),
  );
  expect(picture).toMatchObject({ format: 'jpeg', width: 16, height: 16, bands: 1, ppi: null });
  expect(blocks(picture)).toEqual([[0], [200], [255], [77]]);
});

test('reads RGB', async () => {
  expect(blocks(await read(jpeg([[[255, 10, 20]]], { segments: [adobe(0)] })))).toEqual([[255, 10, 20]]);
});

test('reads luminance and colour differences', async () => {
  const [[red, green, blue]] = blocks(await read(jpeg([[[76, 85, 255]]], { segments: [jfif(0, 1, 1)] }))) as [
    number[],
  ];
  expect(red).toBeGreaterThan(252);
  expect(green).toBeLessThan(3);
  expect(blue).toBeLessThan(3);
});

test('reads a progressive picture', async () => {
  expect(blocks(await read(jpeg(TWO, { progressive: true })))).toEqual([[10], [200]]);
});

test('takes CMYK as (1-C)(1-K), upright or upside down as Adobe programs write it', async () => {
  const cyan = [255, 0, 0, 0];
  const black = [0, 0, 0, 255];
  const grey = [0, 0, 0, 127];
  const wanted = [
    [0, 255, 255],
    [0, 0, 0],
    [128, 128, 128],
  ];
  expect(blocks(await read(jpeg([[cyan, black, grey]])))).toEqual(wanted);
  const reversed = [cyan, black, grey].map((inks) => inks.map((ink) => 255 - ink));
  expect(blocks(await read(jpeg([reversed], { segments: [adobe(0)] })))).toEqual(wanted);
});

test('tells JFIF density per inch and per centimetre', async () => {
  expect((await read(jpeg(TWO, { segments: [jfif(1, 300, 150)] }))).ppi).toEqual({ x: 300, y: 150 });
  expect((await read(jpeg(TWO, { segments: [jfif(2, 100, 200)] }))).ppi).toEqual({ x: 254, y: 508 });
});

test('takes a JFIF aspect ratio for no density', async () => {
  expect((await read(jpeg(TWO, { segments: [jfif(0, 300, 300)] }))).ppi).toBeNull();
});

test('tells EXIF resolution where JFIF has none', async () => {
  const segments = [jfif(0, 1, 1), exif(1, 300)];
  expect((await read(jpeg(TWO, { segments }))).ppi).toEqual({ x: 300, y: 600 });
  expect((await read(jpeg(TWO, { segments: [exif(1, 100, 3)] }))).ppi).toEqual({ x: 254, y: 508 });
  expect((await read(jpeg(TWO, { segments: [exif(1, 300, 1)] }))).ppi).toBeNull();
});

test('lets JFIF density overrule EXIF', async () => {
  expect((await read(jpeg(TWO, { segments: [jfif(1, 72, 72), exif(1, 300)] }))).ppi).toEqual({
    x: 72,
    y: 72,
  });
});

test.each([
  [1, 3, 2, [1, 2, 3, 4, 5, 6]],
  [2, 3, 2, [3, 2, 1, 6, 5, 4]],
  [3, 3, 2, [6, 5, 4, 3, 2, 1]],
  [4, 3, 2, [4, 5, 6, 1, 2, 3]],
  [5, 2, 3, [1, 4, 2, 5, 3, 6]],
  [6, 2, 3, [4, 1, 5, 2, 6, 3]],
  [7, 2, 3, [6, 3, 5, 2, 4, 1]],
  [8, 2, 3, [3, 6, 2, 5, 1, 4]],
])('sets a picture of EXIF orientation %i upright', async (orientation, columns, rows, wanted) => {
  const file = jpeg(
    [
      [[1], [2], [3]],
      [[4], [5], [6]],
    ],
    { segments: [exif(orientation, 300)] },
  );
  const picture = await read(file);
  expect([picture.width, picture.height]).toEqual([columns * 8, rows * 8]);
  expect(blocks(picture).flat()).toEqual(wanted);
  expect(picture.ppi).toEqual(orientation >= 5 ? { x: 600, y: 300 } : { x: 300, y: 600 });
});

test('reads on past an odd JFIF version and stray bytes, which harm no pixel', async () => {
  const odd = jpeg(TWO, { segments: [jfif(1, 300, 300)] });
  odd[11] = 9;
  expect(blocks(await read(odd))).toEqual([[10], [200]]);
  const whole = jpeg(TWO);
  const stray = concat(whole.subarray(0, -2), [1, 2, 3], [0xff, 0xd9]);
  expect(blocks(await read(stray))).toEqual([[10], [200]]);
});
