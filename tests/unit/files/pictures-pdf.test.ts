import { PDFDict, PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { unzlibSync } from 'fflate';
import { expect, test } from 'vitest';
import { deflated } from '../../../workers/files/pdf/deflated.ts';
import { picturesPdf } from '../../../workers/files/pdf/pictures-pdf.ts';
import { randomOf } from '../support/random.ts';

const WIDTH = 37;
const HEIGHT = 23;
const ROW = WIDTH * 3;

async function pageOf(seed: number) {
  const random = randomOf(seed);
  const data = Uint8Array.from({ length: ROW * HEIGHT }, () => Math.floor(random() * 256));
  const pixels = await deflated(data, ROW, 3);
  return { data, page: { width: WIDTH, height: HEIGHT, pixels, mm: [148, 210] as const } };
}

/** Rows as they were before each was written as a difference to the one above (PNG specification, filter type 2). */
function unfiltered(rows: Uint8Array): Uint8Array {
  const out = new Uint8Array(ROW * HEIGHT);
  for (let y = 0; y < HEIGHT; y++) {
    expect(rows[y * (ROW + 1)]).toBe(2);
    for (let i = 0; i < ROW; i++)
      out[y * ROW + i] = rows[y * (ROW + 1) + 1 + i]! + (y === 0 ? 0 : out[(y - 1) * ROW + i]!);
  }
  return out;
}

test('has a page of its true size for each picture, with its very pixels', async () => {
  const pages = [await pageOf(1), await pageOf(2)];
  const pdf = await PDFDocument.load(picturesPdf({ pages: pages.map(({ page }) => page), title: 'Beans' }));
  expect(pdf.getTitle()).toBe('Beans');
  expect(pdf.getPages().map((page) => page.getSize())).toEqual(
    pages.map(() => ({ width: expect.closeTo(419.52756, 4), height: expect.closeTo(595.27559, 4) })),
  );
  pdf.getPages().forEach((page, i) => {
    const { contents } = page.node.Contents() as PDFRawStream;
    expect(new TextDecoder().decode(contents)).toBe('q 419.52756 0 0 595.27559 0 0 cm /Sheet Do Q');
    const drawn = page.node.Resources()!.lookup(PDFName.of('XObject'), PDFDict).lookup(PDFName.of('Sheet'));
    if (!(drawn instanceof PDFRawStream)) throw new Error('the page draws no picture');
    expect(drawn.dict.get(PDFName.of('Width'))!.toString()).toBe(String(WIDTH));
    expect(unfiltered(unzlibSync(drawn.contents))).toEqual(pages[i]!.data);
  });
});

test('is the same for the same pages', async () => {
  const { page } = await pageOf(3);
  expect(picturesPdf({ pages: [page], title: 'Beans' })).toEqual(
    picturesPdf({ pages: [page], title: 'Beans' }),
  );
});
