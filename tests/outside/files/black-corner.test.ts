import { PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { unzlibSync } from 'fflate';
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import { encodePng } from '../../../workers/files/encode-png.ts';
import { greyPdf } from '../../../workers/files/grey-pdf.ts';

const PPI = 600;
const MM_PER_INCH = 25.4;
const WIDTH = 480;
const HEIGHT = 720;
/** A solid square in the top left corner, this many pixels wide: 5.08 mm. */
const SIDE = 120;

function inSquare(i: number): boolean {
  return i % WIDTH < SIDE && Math.floor(i / WIDTH) < SIDE;
}

/** Box of the dark pixels of a grey picture, in mm from its top left corner. */
function darkBoxMm(grey: ArrayLike<number>, width: number, mmPerPixel: [number, number]): number[] {
  const dark = Array.from({ length: grey.length }, (_, i) => i).filter((i) => grey[i]! < 128);
  const columns = dark.map((i) => i % width);
  const rows = dark.map((i) => Math.floor(i / width));
  const range = (values: number[]) => [
    values.reduce((a, b) => Math.min(a, b)),
    values.reduce((a, b) => Math.max(a, b)) + 1,
  ];
  const [left, right] = range(columns) as [number, number];
  const [top, bottom] = range(rows) as [number, number];
  return [left * mmPerPixel[0], top * mmPerPixel[1], right * mmPerPixel[0], bottom * mmPerPixel[1]];
}

function expectCorner(box: number[]): void {
  const side = (SIDE * MM_PER_INCH) / PPI;
  [0, 0, side, side].forEach((mm, i) => {
    expect(box[i]).toBeCloseTo(mm, 3);
  });
}

test('a black square only top left is dark, top left and right in mm in another reader of the PNG', async () => {
  const data = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => (inSquare(i) ? 0 : 255));
  const file = Buffer.from(await encodePng({ width: WIDTH, height: HEIGHT, bands: 1, data, ppi: PPI }));
  const picture = PNG.sync.read(file);
  const phys = file.indexOf('pHYs') + 4;
  const mmPerPixel = [1000 / file.readUInt32BE(phys), 1000 / file.readUInt32BE(phys + 4)] as [number, number];
  const grey = picture.data.filter((_, i) => i % 4 === 0);
  expect(grey[0]).toBe(0);
  expect(grey.at(-1)).toBe(255);
  expectCorner(darkBoxMm(grey, picture.width, mmPerPixel));
});

test('a black square only top left is dark, top left and right in mm in another reader of the PDF', async () => {
  const data = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => (inSquare(i) ? 255 : 0));
  const document = await PDFDocument.load(
    greyPdf({ width: WIDTH, height: HEIGHT, data, ppi: PPI, title: 'corner' }),
  );
  const page = document.getPage(0);
  const streams = document.context
    .enumerateIndirectObjects()
    .map(([, object]) => object)
    .filter((object) => object instanceof PDFRawStream);
  const image = streams.find(({ dict }) => dict.has(PDFName.of('Width')))!;
  const content = new TextDecoder().decode(streams.find((stream) => stream !== image)!.contents);
  const [across, skewX, skewY, up, left, bottom] = content.match(/[\d.]+/g)!.map(Number);
  expect([skewX, skewY, left, bottom]).toEqual([0, 0, 0, 0]);
  expect([across, up]).toEqual([page.getMediaBox().width, page.getMediaBox().height]);
  const mmPerPoint = MM_PER_INCH / 72;
  const grey = unzlibSync(image.contents);
  expect(grey[0]).toBe(0);
  expect(grey.at(-1)).toBe(255);
  expectCorner(darkBoxMm(grey, WIDTH, [(across! * mmPerPoint) / WIDTH, (up! * mmPerPoint) / HEIGHT]));
});
