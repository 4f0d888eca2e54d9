import { expect, test } from 'vitest';
import { inspectPicture } from '../../../workers/files/inspect.ts';
import { concat, utf8 } from './make/bytes.ts';
import { read } from './read.ts';

const svg = (attributes: string, body = '') =>
  utf8(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`);
const inspect = (bytes: Uint8Array, vectorPpi: number, widthMm?: number) =>
  inspectPicture(bytes, 'beans.svg', widthMm === undefined ? { vectorPpi } : { vectorPpi, widthMm });

test('draws an odd physical size to the very pixel', async () => {
  const head = await inspect(svg('width="169.333mm" height="211.667mm"'), 600);
  expect(head).toEqual({
    format: 'svg',
    width: 4000,
    height: 5000,
    bands: 4,
    ppi: null,
    sizeMm: [169.333, 211.667],
    notes: [],
  });
});

test.each([
  ['50.8mm', 50.8],
  ['5.08cm', 50.8],
  ['2in', 50.8],
  ['144pt', 50.8],
  ['12pc', 50.8],
  ['203.2Q', 50.8],
  [' 2.0e0IN ', 50.8],
])('knows the unit of %s', async (width, mm) => {
  const head = await inspect(svg(`width="${width}" height="${width}"`), 100);
  expect(head).toMatchObject({ width: 200, height: 200 });
  expect(head.sizeMm![0]).toBeCloseTo(mm, 9);
});

test.each([
  'width="96" height="48"',
  'width="96px" height="48px"',
  'viewBox="0 0 96 48"',
  'width="100%" viewBox="0 0 96 48"',
])('does not believe px: %s has no physical size', async (attributes) => {
  expect(await inspect(svg(attributes), 300)).toMatchObject({ width: 300, height: 150, sizeMm: null });
});

test('takes the width it is told, and keeps the shape', async () => {
  expect(await inspect(svg('width="96" height="48"'), 254, 100)).toMatchObject({ width: 1000, height: 500 });
  expect(await inspect(svg('width="9mm" height="18mm"'), 254, 100)).toMatchObject({
    width: 1000,
    height: 2000,
  });
});

test('works out the side that is missing from the view box', async () => {
  const head = await inspect(svg('height="25.4mm" viewBox="0 0 30 10"'), 100);
  expect(head).toMatchObject({ width: 300, height: 100 });
});

test('gives straight alpha and leaves paper transparent', async () => {
  const body = '<rect width="1" height="2" fill="#f80" fill-opacity=".5"/>';
  const { pixels } = await read(svg('width="2in" height="2in" viewBox="0 0 2 2"', body), { vectorPpi: 1 });
  const left = [255, 135, 0, 128];
  const right = [0, 0, 0, 0];
  expect(pixels).toEqual([...left, ...right, ...left, ...right]);
});

test('fills the pixels exactly, with a view box or without', async () => {
  for (const attributes of ['width="3in" height="2in" viewBox="0 0 30 20"', 'width="3in" height="2in"']) {
    const { pixels } = await read(svg(attributes, '<rect width="100%" height="100%"/>'), { vectorPpi: 3 });
    expect(pixels).toEqual(
      Array(9 * 6)
        .fill([0, 0, 0, 255])
        .flat(),
    );
  }
});

test('sets black at the top left where it stands', async () => {
  const body = '<path d="M0 0h48v48h-48z"/>';
  const { pixels } = await read(svg('width="1in" height="1in"', body), { vectorPpi: 2 });
  expect(pixels.filter((_, i) => i % 4 === 3)).toEqual([255, 0, 0, 0]);
});

test('reads a prefixed root, a doctype with entities, and UTF-16', async () => {
  const prefixed = utf8(
    '<s:svg xmlns:s="http://www.w3.org/2000/svg" width="1in" height="1in"><s:rect width="96" height="96"/></s:svg>',
  );
  const declared = utf8(
    '<?xml version="1.0"?><!-- > --><!DOCTYPE svg [<!ENTITY ns "http://www.w3.org/2000/svg">]>' +
      '<svg xmlns="&ns;" width="1in" height="1in"><rect width="96" height="96"/></svg>',
  );
  const plain = new TextDecoder().decode(svg('width="1in" height="1in"', '<rect width="96" height="96"/>'));
  const wide = concat([0xff, 0xfe], ...[...plain].map((char) => [char.charCodeAt(0), 0]));
  for (const file of [prefixed, declared, wide]) {
    expect((await read(file, { vectorPpi: 1 })).pixels).toEqual([0, 0, 0, 255]);
  }
});

test('says that text and linked pictures are left out', async () => {
  const body = '<text y="9">beans</text><image width="9" height="9" href="beans.png"/>';
  const { notes } = await inspect(svg('width="9mm" height="9mm"', body), 600);
  expect(notes).toEqual([
    expect.stringContaining('turn text into outlines'),
    expect.stringContaining('embed them'),
  ]);
});

test('does not take embedded pictures or comments for what is left out', async () => {
  const body = '<!-- <text> --><textPath/><image width="9" height="9" href="data:image/png;base64,AA"/>';
  expect((await inspect(svg('width="9mm" height="9mm"', body), 600)).notes).toEqual([]);
});

test('refuses a drawing that fills its memory, and draws the next', async () => {
  const layers = 40;
  const body = `${'<g opacity=".9">'.repeat(layers)}<rect width="999" height="999"/>${'</g>'.repeat(layers)}`;
  await expect(read(svg('width="4in" height="4in"', body), { vectorPpi: 1000 })).rejects.toThrow(
    /^beans: the SVG is too heavy to draw at 4000 x 4000 px/,
  );
  const next = svg('width="1in" height="1in"', '<rect width="96" height="96"/>');
  expect((await read(next, { vectorPpi: 1 })).pixels).toEqual([0, 0, 0, 255]);
});
