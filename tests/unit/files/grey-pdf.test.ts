import { PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { unzlibSync } from 'fflate';
import { expect, test } from 'vitest';
import { greyPdf } from '../../../workers/files/grey-pdf.ts';

const PLATE = {
  width: 3,
  height: 2,
  data: Uint8Array.of(0, 255, 128, 1, 2, 254),
  ppi: 600,
  title: 'Beans 1 of 3: damson',
};

async function open(file: Uint8Array) {
  const document = await PDFDocument.load(file);
  const streams = document.context
    .enumerateIndirectObjects()
    .map(([, object]) => object)
    .filter((object) => object instanceof PDFRawStream);
  const image = streams.find(({ dict }) => dict.get(PDFName.of('Subtype')) === PDFName.of('Image'))!;
  const content = streams.find((stream) => stream !== image)!;
  return { document, image, content: new TextDecoder().decode(content.contents) };
}

test('is one page of the plate at its very size', async () => {
  const { document, content } = await open(
    greyPdf({ ...PLATE, width: 4000, height: 5000, data: new Uint8Array(20_000_000) }),
  );
  expect(document.getPageCount()).toBe(1);
  const page = document.getPage(0);
  const box = { x: 0, y: 0, width: 480, height: 600 };
  expect(page.getMediaBox()).toEqual(box);
  expect(page.node.TrimBox()!.asRectangle()).toEqual(box);
  expect(content).toBe('q 480 0 0 600 0 0 cm /Plate Do Q');
});

test('holds the plate as one 8-bit grey image with solid as black', async () => {
  const { image } = await open(greyPdf(PLATE));
  const entry = (name: string) => image.dict.get(PDFName.of(name))!.toString();
  expect(['Width', 'Height', 'ColorSpace', 'BitsPerComponent', 'Filter'].map(entry)).toEqual([
    '3',
    '2',
    '/DeviceGray',
    '8',
    '/FlateDecode',
  ]);
  expect([...unzlibSync(image.contents)]).toEqual([255, 0, 127, 254, 253, 1]);
});

test('bears its title, in any script', async () => {
  const title = 'Bohnenräuber – 豆 (1)';
  expect((await open(greyPdf({ ...PLATE, title }))).document.getTitle()).toBe(title);
});

test('is old flat PDF whose table finds every object', () => {
  const text = new TextDecoder('latin1').decode(greyPdf(PLATE));
  expect(text.startsWith('%PDF-1.4\n')).toBe(true);
  expect(text).not.toMatch(/ObjStm|XRef/);
  const offsets = [...text.matchAll(/^(\d{10}) 00000 n $/gm)].map((match) => Number(match[1]));
  expect(offsets).toHaveLength(6);
  offsets.forEach((offset, i) => {
    expect(text.slice(offset).startsWith(`${i + 1} 0 obj\n`)).toBe(true);
  });
  const table = Number(/startxref\n(\d+)\n%%EOF\n$/.exec(text)![1]);
  expect(text.slice(table, table + 5)).toBe('xref\n');
});

test('is the same bytes each time', () => {
  expect(greyPdf(PLATE)).toEqual(greyPdf({ ...PLATE, data: PLATE.data.slice() }));
});

test('leaves the plate as it was', () => {
  const data = PLATE.data.slice();
  greyPdf({ ...PLATE, data });
  expect(data).toEqual(PLATE.data);
});

test('refuses data of another size', () => {
  expect(() => greyPdf({ ...PLATE, data: new Uint8Array(5) })).toThrow(/width \* height/);
});
