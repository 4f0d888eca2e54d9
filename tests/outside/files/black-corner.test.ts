import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { afterAll, expect, test } from 'vitest';
import { encodePng } from '../../../workers/files/encode-png.ts';
import { encodeTiff } from '../../../workers/files/encode-tiff.ts';
import { greyPdf } from '../../../workers/files/pdf/grey-pdf.ts';
import { Desk, digest, run } from './programs.ts';

const desk = new Desk();
afterAll(() => desk.remove());

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
  const grey = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => (inSquare(i) ? 0 : 255));
  const pdf = desk.file(
    'corner.pdf',
    await greyPdf({ width: WIDTH, height: HEIGHT, grey, ppi: PPI, title: 'corner' }),
  );
  const size = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(run('pdfinfo', pdf))!;
  const png = `${desk.path}/corner.png`;
  run('gs', '-q', '-dNOPAUSE', '-dBATCH', '-dSAFER', '-sDEVICE=pnggray', `-r${PPI}`, '-o', png, pdf);
  const picture = PNG.sync.read(readFileSync(png));
  const seen = picture.data.filter((_, i) => i % 4 === 0);
  expect(digest(seen)).toBe(digest(grey));
  const mmPerPixel = [1, 2].map((i) => (Number(size[i]) * MM_PER_INCH) / 72 / (i === 1 ? WIDTH : HEIGHT));
  expectCorner(darkBoxMm(seen, WIDTH, mmPerPixel as [number, number]));
});

test.each(['grey', 'one-bit'] as const)(
  'a black square only top left is dark, top left and right in mm in another reader of the %s TIFF',
  async (depth) => {
    const data = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => (inSquare(i) ? 0 : 255));
    const bytes = await encodeTiff({ width: WIDTH, height: HEIGHT, data, ppi: PPI }, depth);
    const tiff = desk.file(`${depth}.tif`, bytes);
    const told = run('tiffinfo', tiff);
    expect(told).toContain(`Compression Scheme: ${depth === 'grey' ? 'LZW' : 'CCITT Group 4'}`);
    expect(told).toContain(`Bits/Sample: ${depth === 'grey' ? 8 : 1}`);
    expect(told).toContain('Photometric Interpretation: min-is-black');
    const ppi = /Resolution: ([\d.]+), ([\d.]+) pixels\/inch/.exec(told)!;
    const seen = unpacked(tiff, depth === 'grey' ? 8 : 1);
    expect(digest(seen)).toBe(digest(data));
    const mmPerPixel = [MM_PER_INCH / Number(ppi[1]), MM_PER_INCH / Number(ppi[2])] as [number, number];
    expectCorner(darkBoxMm(seen, WIDTH, mmPerPixel));
  },
);

test('pages of a TIFF are the plates in their order', async () => {
  const data = Uint8Array.from({ length: WIDTH * HEIGHT * 2 }, (_, i) => (i < WIDTH * HEIGHT ? 40 : 200));
  const tiff = desk.file(
    'pages.tif',
    await encodeTiff({ width: WIDTH, height: HEIGHT, data, ppi: PPI }, 'grey'),
  );
  expect(run('tiffinfo', tiff).match(/Image Width: 480 Image Length: 720/g)).toHaveLength(2);
  expect([unpacked(tiff, 8, 0)[0], unpacked(tiff, 8, 1)[0]]).toEqual([40, 200]);
});

/** Pixels of a page of a TIFF as libtiff's own tool unpacks them, 0 black .. 255 white. */
function unpacked(tiff: string, bits: 1 | 8, page = 0): Uint8Array {
  const flat = `${desk.path}/flat.tif`;
  run('tiffcp', '-c', 'none', '-r', String(HEIGHT), `${tiff},${page}`, flat);
  const bytes = readFileSync(flat);
  const offset = Number(/\n\s*0: \[\s*(\d+),/.exec(run('tiffinfo', '-s', flat))![1]);
  const rowBytes = Math.ceil((WIDTH * bits) / 8);
  return Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => {
    const x = i % WIDTH;
    const row = offset + Math.floor(i / WIDTH) * rowBytes;
    return bits === 8 ? bytes[row + x]! : ((bytes[row + (x >> 3)]! >> (7 - (x & 7))) & 1) * 255;
  });
}
