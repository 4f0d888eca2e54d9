import { PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { expect, test } from 'vitest';
import { greyPdf } from '../../../workers/files/pdf/grey-pdf.ts';
import { predictedRows } from './predicted-rows.ts';

const PLATE = {
  width: 3,
  height: 2,
  grey: Uint8Array.of(255, 0, 127, 254, 253, 1),
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
    await greyPdf({ ...PLATE, width: 4000, height: 5000, grey: new Uint8Array(20_000_000) }),
  );
  expect(document.getPageCount()).toBe(1);
  const page = document.getPage(0);
  const box = { x: 0, y: 0, width: 480, height: 600 };
  expect(page.getMediaBox()).toEqual(box);
  expect(page.node.TrimBox()!.asRectangle()).toEqual(box);
  expect(content).toBe('q 480 0 0 600 0 0 cm /Picture Do Q');
});

test('holds the plate as one 8-bit grey image with solid as black', async () => {
  const { image } = await open(await greyPdf(PLATE));
  const entry = (name: string) => image.dict.get(PDFName.of(name))!.toString();
  expect(['Width', 'Height', 'ColorSpace', 'BitsPerComponent', 'Filter'].map(entry)).toEqual([
    '3',
    '2',
    '/DeviceGray',
    '8',
    '/FlateDecode',
  ]);
  expect([...predictedRows(image.contents, 3)]).toEqual([255, 0, 127, 254, 253, 1]);
});

test('bears its title, in any script', async () => {
  const title = 'Bohnenräuber – 豆 (1)';
  expect((await open(await greyPdf({ ...PLATE, title }))).document.getTitle()).toBe(title);
});

test('is old flat PDF whose table finds every object', async () => {
  const text = new TextDecoder('latin1').decode(await greyPdf(PLATE));
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

test('is the same bytes each time', async () => {
  expect(await greyPdf(PLATE)).toEqual(await greyPdf({ ...PLATE, grey: PLATE.grey.slice() }));
});

test('leaves the plate as it was', async () => {
  const grey = PLATE.grey.slice();
  await greyPdf({ ...PLATE, grey });
  expect(grey).toEqual(PLATE.grey);
});

test('refuses data of another size', async () => {
  await expect(greyPdf({ ...PLATE, grey: new Uint8Array(5) })).rejects.toThrow(/width \* height/);
});
