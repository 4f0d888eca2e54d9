import { PDFDict, PDFDocument, PDFName, type PDFRawStream } from '@cantoo/pdf-lib';
import { unzlibSync } from 'fflate';
import { expect, test } from 'vitest';
import { encodePng } from '../../../workers/files/encode-png.ts';
import { picturePdf } from '../../../workers/files/picture-pdf.ts';
import { randomOf } from '../support/random.ts';

const WIDTH = 37;
const HEIGHT = 23;

async function pageOf(seed: number) {
  const random = randomOf(seed);
  const data = Uint8Array.from({ length: WIDTH * HEIGHT * 3 }, () => Math.floor(random() * 256));
  const png = await encodePng({ width: WIDTH, height: HEIGHT, bands: 3, data, ppi: 300, srgb: true });
  return { data, page: { png, mm: [148, 210] as const } };
}

/** Rows of a PNG as they were before each was written as a difference (PNG specification, filter types 0 to 2). */
function unfiltered(rows: Uint8Array): Uint8Array {
  const stride = WIDTH * 3;
  const out = new Uint8Array(stride * HEIGHT);
  for (let y = 0; y < HEIGHT; y++) {
    const filter = rows[y * (stride + 1)]!;
    for (let i = 0; i < stride; i++) {
      const left = i < 3 ? 0 : out[y * stride + i - 3]!;
      const up = y === 0 ? 0 : out[(y - 1) * stride + i]!;
      const added = filter === 2 ? up : filter === 1 ? left : 0;
      expect([0, 1, 2]).toContain(filter);
      out[y * stride + i] = rows[y * (stride + 1) + 1 + i]! + added;
    }
  }
  return out;
}

test('has a page of its true size for each picture, with its very pixels', async () => {
  const pages = [await pageOf(1), await pageOf(2)];
  const bytes = await picturePdf({ pages: pages.map(({ page }) => page), title: 'Beans' });
  const pdf = await PDFDocument.load(bytes);
  expect(pdf.getTitle()).toBe('Beans');
  expect(pdf.getPages().map((page) => page.getSize())).toEqual(
    pages.map(() => ({ width: expect.closeTo(419.53, 2), height: expect.closeTo(595.276, 2) })),
  );
  pdf.getPages().forEach((page, i) => {
    const drawn = page.node.Contents() as PDFRawStream;
    expect(new TextDecoder().decode(unzlibSync(drawn.contents))).toMatch(
      /^q 419\.\d+ 0 0 595\.\d+ 0 0 cm \/Sheet Do Q$/,
    );
    const image = page.node
      .Resources()!
      .lookup(PDFName.of('XObject'), PDFDict)
      .lookup(PDFName.of('Sheet'), PDFRawStream);
    expect(image.dict.get(PDFName.of('Width'))!.toString()).toBe(String(WIDTH));
    expect(unfiltered(unzlibSync(image.contents))).toEqual(pages[i]!.data);
  });
});

test('is the same for the same pages', async () => {
  const { page } = await pageOf(3);
  const twice = await Promise.all([1, 2].map(() => picturePdf({ pages: [page], title: 'Beans' })));
  expect(twice[0]).toEqual(twice[1]);
});
