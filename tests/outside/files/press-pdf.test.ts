import { afterAll, describe, expect, it } from 'vitest';
import type { Ink } from '../../../src/graph/inks.ts';
import type { PrintInput } from '../../../src/ink/model-input.ts';
import { encodeFax } from '../../../workers/files/encode-tiff.ts';
import { deflated } from '../../../workers/files/pdf/deflated.ts';
import { type PressPdf, type PressPixels, pressPdf } from '../../../workers/files/pdf/press-pdf.ts';
import { randomOf } from '../../unit/support/random.ts';
import { Desk, digest, run, said, separated } from './programs.ts';

const desk = new Desk();
afterAll(() => desk.remove());

const PPI = 300;
const WIDTH = 331;
const HEIGHT = 207;
/** Where the plates lie on the page, pixels. */
const LEFT = 23;
const TOP = 41;
const PAGE = { width: 400, height: 300, ppi: PPI };
const BOX = [LEFT, TOP, LEFT + WIDTH, TOP + HEIGHT] as const;

const NAMES = [
  'straw',
  'brick#41',
  'Тёрн',
  '接骨木',
  'sea (green)',
  'a/b',
  'six',
  'seven%',
  'eight',
  'nine',
  'ten',
  'soot',
];

/** Noise with flat parts: every value comes, on every plate elsewhere. */
function plates(count: number, values: (noise: number) => number): Uint8Array[] {
  return Array.from({ length: count }, (_, plate) => {
    const random = randomOf(plate + 1);
    const flat = values(((plate * 37) % 256) / 256);
    return Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => (i % 50 < 20 ? flat : values(random())));
  });
}

const grey = (noise: number) => Math.floor(noise * 256);
const oneBit = (noise: number) => (noise < 0.5 ? 0 : 255);

function printOf(count: number): PrintInput {
  const inks = Array.from(
    { length: count },
    (_, i): Ink => ({
      id: `ink${i}`,
      name: NAMES[i]!,
      lab: [40 + i * 3, 60 - i * 10, i * 9 - 40],
      opacity: 0.005,
    }),
  );
  return { paper: { lab: [95, 0, 0], surface: 'uncoated' }, inks };
}

async function pixelsOf(kind: PressPixels['kind'], planes: readonly Uint8Array[]): Promise<PressPixels> {
  if (kind === 'film') {
    const sheets = planes.map((plane) => {
      const sheet = new Uint8Array(PAGE.width * PAGE.height).fill(255);
      for (let y = 0; y < HEIGHT; y++)
        for (let x = 0; x < WIDTH; x++)
          sheet[(y + TOP) * PAGE.width + x + LEFT] = 255 - plane[y * WIDTH + x]!;
      return sheet;
    });
    return { kind, pictures: await Promise.all(sheets.map((data) => encodeFax({ ...PAGE, data }))) };
  }
  if (kind === 'by-plate')
    return { kind, pictures: await Promise.all(planes.map((plane) => deflated(plane, WIDTH, 1))) };
  const count = planes.length;
  const woven = new Uint8Array(WIDTH * HEIGHT * count);
  planes.forEach((plane, at) => {
    plane.forEach((value, i) => {
      woven[i * count + at] = value;
    });
  });
  return { kind, picture: await deflated(woven, WIDTH * count, count) };
}

async function made(
  kind: PressPixels['kind'],
  planes: readonly Uint8Array[],
  change: Partial<PressPdf> = {},
) {
  const count = planes.length;
  return pressPdf({
    title: 'Bean poster',
    madeAt: '2031-05-06T07:08:09Z',
    page: { ...PAGE, trim: BOX, bleed: BOX },
    names: NAMES.slice(0, count),
    print: printOf(count),
    pixels: await pixelsOf(kind, planes),
    marks: [],
    trapped: false,
    ...change,
  });
}

/** The part of a separated page where the plates lie, as coverage. */
function cut(seen: { width: number; data: Uint8Array }): Uint8Array {
  const coverage = new Uint8Array(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++)
      coverage[y * WIDTH + x] = 255 - seen.data[(y + TOP) * seen.width + x + LEFT]!;
  return coverage;
}

describe.each(['one-image', 'by-plate', 'film'] as const)('a press PDF, %s', (kind) => {
  it.each([1, 2, 3, 5, 12])('gives Ghostscript all of its %i plates byte for byte', async (count) => {
    const planes = plates(count, kind === 'film' ? oneBit : grey);
    const pdf = desk.file(`${kind}-${count}.pdf`, await made(kind, planes));
    const seen = await separated(desk, pdf, PPI);
    const inks = [...seen].filter(([name]) => !['Cyan', 'Magenta', 'Yellow', 'Black'].includes(name));
    expect(inks).toHaveLength(count);
    for (const [, plate] of inks) expect([plate.width, plate.height]).toEqual([PAGE.width, PAGE.height]);
    const found = inks.map(([, plate]) => digest(cut(plate))).sort();
    expect(found).toEqual(planes.map((plane) => digest(plane)).sort());
    for (const plain of ['straw', 'six', 'soot'].filter((name) => NAMES.indexOf(name) < count))
      expect(digest(cut(seen.get(plain)!))).toBe(digest(planes[NAMES.indexOf(plain)]!));
  });

  it('passes a structural check and tells its boxes', async () => {
    const pdf = desk.file(`${kind}.pdf`, await made(kind, plates(3, kind === 'film' ? oneBit : grey)));
    expect(said('qpdf', '--check', pdf)).toMatchObject({
      code: 0,
      text: expect.stringContaining('No syntax or stream encoding errors found'),
    });
    const told = run('pdfinfo', '-box', pdf);
    const box = (name: string) =>
      new RegExp(`${name}:\\s+(.*)`).exec(told)![1]!.trim().split(/\s+/).map(Number);
    const pt = (px: number) => (px * 72) / PPI;
    expect(box('MediaBox')).toEqual([0, 0, pt(400), pt(300)]);
    const trim = [LEFT, 300 - TOP - HEIGHT, LEFT + WIDTH, 300 - TOP].map((px) => Number(pt(px).toFixed(2)));
    expect(box('TrimBox')).toEqual(trim);
    expect(told).toContain('Bean poster');
    const images = run('pdfimages', '-list', pdf).trim().split('\n').slice(2);
    expect(images).toHaveLength(kind === 'one-image' ? 1 : 3);
    const columns = images[0]!.trim().split(/\s+/);
    expect(columns.slice(5, 9)).toEqual(
      kind === 'one-image'
        ? ['devn', '3', '8', 'image']
        : ['sep', '1', kind === 'film' ? '1' : '8', kind === 'film' ? 'ccitt' : 'image'],
    );
  });
});

it('loses plates when its overprint is taken out: what is above counts', async () => {
  const planes = plates(3, grey);
  const bytes = Buffer.from(await made('by-plate', planes));
  const text = bytes.toString('latin1').replace('/OP true /op true', '/OP false/op false');
  const pdf = desk.file('knocking-out.pdf', Buffer.from(text, 'latin1'));
  const seen = await separated(desk, pdf, PPI);
  expect(digest(cut(seen.get('straw')!))).not.toBe(digest(planes[0]!));
});

it('prints marks on every plate and patches on their own', async () => {
  const planes = plates(2, grey);
  const names = ['straw', 'soot'];
  const marks = [
    { shape: 'box', box: [1, 1, 2, 2], tintPercent: 100, plate: null },
    { shape: 'box', box: [4, 1, 5, 2], tintPercent: 50, plate: 1 },
  ] as const;
  const pdf = desk.file('marks.pdf', await made('one-image', planes, { marks, names }));
  const seen = await separated(desk, pdf, PPI);
  const at = (name: string, xMm: number) => {
    const plate = seen.get(name)!;
    const px = (mm: number) => Math.round((mm * PPI) / 25.4);
    return plate.data[px(1.5) * plate.width + px(xMm)];
  };
  expect([at('straw', 1.5), at('soot', 1.5)]).toEqual([0, 0]);
  expect(at('straw', 4.5)).toBe(255);
  expect(Math.abs(at('soot', 4.5)! - 127.5)).toBeLessThanOrEqual(1);
});

it('shows the predicted overprint to a viewer that knows no plates', async () => {
  const solid = new Uint8Array(WIDTH * HEIGHT).fill(255);
  const pdf = desk.file('solid.pdf', await made('one-image', [solid, solid]));
  run(
    'gs',
    '-q',
    '-dNOPAUSE',
    '-dBATCH',
    '-dSAFER',
    '-sDEVICE=png16m',
    `-r${PPI}`,
    '-o',
    `${desk.path}/seen.png`,
    pdf,
  );
  const { printModel } = await import('../../../src/ink/model.ts');
  const { screenOf } = await import('../../../src/ink/screen.ts');
  const { PNG } = await import('pngjs');
  const { readFileSync } = await import('node:fs');
  const seen = PNG.sync.read(readFileSync(`${desk.path}/seen.png`));
  const at = (150 * seen.width + 200) * 4;
  const rgb = [...seen.data.subarray(at, at + 3)];
  const wanted = screenOf(printModel(printOf(2)).labOf([1, 1]))
    .hex.match(/[0-9a-f]{2}/gi)!
    .map((each) => Number.parseInt(each, 16));
  rgb.forEach((value, i) => {
    expect(Math.abs(value - wanted[i]!)).toBeLessThanOrEqual(6);
  });
});

it('holds an output intent, metadata that agree with its information, and an identifier', async () => {
  const text = Buffer.from(await made('one-image', plates(2, grey))).toString('latin1');
  expect(text.startsWith('%PDF-1.6\n')).toBe(true);
  expect(text).toContain('/S /GTS_PDFX');
  expect(text).toContain('<pdfxid:GTS_PDFXVersion>PDF/X-4</pdfxid:GTS_PDFXVersion>');
  expect(text).toContain('<xmp:CreateDate>2031-05-06T07:08:09Z</xmp:CreateDate>');
  expect(text).toContain('/CreationDate (D:20310506070809Z)');
  expect(text).toMatch(/\/ID \[<([0-9a-f]{32})> <\1>\]/);
  expect(text).toContain('/Trapped /False');
});
