import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { hashBytes } from '../../../src/graph/keys.ts';
import { type Client, type Rendered, type RenderFormat, startEngine } from '../../../workers/client.ts';
import { coverageOfPng, linePng } from '../../unit/support/files.ts';
import { defaultJob, type Settings, THREE_INKS, withBypassed, withRecipes } from '../../unit/support/jobs.ts';
import { drawnPlane } from '../../unit/support/pictures.ts';
import { Desk, digest, readGrey, run, said, separated } from './programs.ts';

const PPI = 300;
/** A box of line 30 px off the edges, and a bar that runs off on the left. */
const LINES = linePng(
  drawnPlane(360, 240, (x, y) => {
    const onBox = Math.abs(x - 180) <= 150 && Math.abs(y - 120) <= 90;
    const inBox = Math.abs(x - 180) < 146 && Math.abs(y - 120) < 86;
    return (onBox && !inBox) || (x < 60 && y > 180 && y < 196) ? 255 : 0;
  }),
);

const desk = new Desk();
let client: Client;
beforeAll(async () => {
  client = await startEngine({ workers: 2 });
  await client.addAsset({ name: 'lines.png', bytes: LINES });
});
afterAll(async () => {
  await client.close();
  desk.remove();
});

interface Change {
  sheet?: Settings | undefined;
  file?: Settings;
  drawing?: Settings;
  inks?: Settings;
}

/** The look-first job without grain, with a press sheet where one is asked for. */
function pressJob({ sheet, file = {}, drawing = {}, inks = THREE_INKS }: Change): Job {
  const job = withRecipes(
    withBypassed(defaultJob({ asset: hashBytes(LINES), ppi: PPI, ...drawing }, inks), 'plate-grain'),
    { r1: { straw: 40, brick: 60 }, r2: { straw: 100 } },
    { brick: 60 },
  );
  const nodes = job.graph.nodes.map((node) =>
    node.id === 'press-file' ? { ...node, settings: file } : node,
  );
  if (!sheet) return { ...job, graph: { ...job.graph, nodes } };
  const wire = { from: { node: 'press-sheet', port: 'sheet' }, to: { node: 'press-file', port: 'sheet' } };
  const sheetNode = { id: 'press-sheet', kind: 'press-sheet', settings: sheet, bypassed: false };
  return { ...job, graph: { nodes: [...nodes, sheetNode], wires: [...job.graph.wires, wire] } };
}

const make = (change: Change, ...formats: RenderFormat[]): Promise<Rendered> =>
  client.run('render', { job: pressJob(change), formats, scale: 1, madeAt: '2031-05-06T07:08:09Z' });
const bytesOf = ({ files }: Rendered, name: string) => files.find((file) => file.name === name)!.bytes;
const codes = ({ report }: Rendered) => report.complaints.map(({ code }) => code);
const BARE = { cropMarks: false, registerMarks: false, plateNames: false, colourBar: false };
/** 3 mm at 300 ppi. */
const BLEED_PX = 35;

/** A box of a plane, row by row. */
function cut(
  { width, data }: { width: number; data: Uint8Array },
  left: number,
  top: number,
  w: number,
  h: number,
) {
  return Array.from({ length: h }, (_, y) => [
    ...data.subarray((top + y) * width + left, (top + y) * width + left + w),
  ]).flat();
}

describe('one set of plates', () => {
  it('is in PNG, TIFF, grey PDF and press PDF', async () => {
    const made = await make({ sheet: { bleedMm: 3, tintWedge: true } }, 'png', 'grey-pdf', 'pdf', 'tiff');
    const pdf = desk.file('plates.pdf', bytesOf(made, 'plates.pdf'));
    const seen = await separated(desk, pdf, PPI);
    for (const { id, order, ink } of made.report.plates) {
      const png = coverageOfPng(bytesOf(made, `plate-${order}-${id}.png`));
      expect([png.width, png.height]).toEqual([360, 240]);
      const name = { straw: 'Straw', brick: 'Brick', soot: 'Soot' }[ink]!;
      const stem = `Sampler-30x20mm-${order}-${name}`;
      const tiff = await readGrey(bytesOf(made, `${stem}.tif`));
      const greyPdf = desk.file(`${id}.pdf`, bytesOf(made, `${stem}.pdf`));
      run(
        'gs',
        '-q',
        '-dNOPAUSE',
        '-dBATCH',
        '-dSAFER',
        '-sDEVICE=pnggray',
        `-r${PPI}`,
        '-o',
        `${desk.path}/${id}.png`,
        greyPdf,
      );
      const page = await readGrey(readFileSync(`${desk.path}/${id}.png`));
      const plate = seen.get(id)!;
      expect([plate.width, plate.height, page.width, page.height]).toEqual([
        tiff.width,
        tiff.height,
        tiff.width,
        tiff.height,
      ]);
      const [left, top] = placeOfTrim(pdf);
      const wanted = [...png.data].map((value) => 255 - value);
      for (const sheet of [tiff, page, plate])
        expect(digest(cut(sheet, left, top, 360, 240))).toBe(digest(wanted));
    }
  });

  it('has coverage as the report says it', async () => {
    const made = await make({}, 'png');
    for (const { file, coveragePercent } of made.report.plates) {
      const { data } = coverageOfPng(bytesOf(made, file!));
      const mean = data.reduce((sum, value) => sum + value, 0) / data.length;
      expect(coveragePercent).toBeCloseTo((mean * 100) / 255, 3);
    }
  });

  it('is whole in files that other readers find sound', async () => {
    const made = await make({ sheet: {} }, 'png', 'grey-pdf', 'pdf', 'tiff', 'proof-pdf');
    for (const { name, bytes } of made.files) {
      const path = desk.file(name, bytes);
      if (name.endsWith('.pdf')) expect(said('qpdf', '--check', path).code).toBe(0);
      else if (name.endsWith('.png')) expect(said('pngcheck', path).code).toBe(0);
      else expect(run('tiffinfo', path)).toContain('Resolution: 300, 300 pixels/inch');
    }
    expect(made.files.length).toBe(3 + 3 + 1 + 3 + 1);
  });
});

/** Upper left corner of the trim in pixels, as poppler reads it. */
function placeOfTrim(pdf: string): [number, number] {
  const told = run('pdfinfo', '-box', pdf);
  const box = (name: string) =>
    new RegExp(`${name}:\\s+(.*)`).exec(told)![1]!.trim().split(/\s+/).map(Number);
  const px = (pt: number) => Math.round((pt * PPI) / 72);
  const [left, , , top] = box('TrimBox');
  return [px(left!), px(box('MediaBox')[3]! - top!)];
}

describe('bleed', () => {
  it('stays paper, and is told, where art ends at the trim', async () => {
    const made = await make({ sheet: { ...BARE, bleedMm: 3 } }, 'tiff');
    const sheet = await readGrey(bytesOf(made, 'Sampler-30x20mm-2-Brick.tif'));
    expect([sheet.width, sheet.height]).toEqual([360 + 2 * BLEED_PX, 240 + 2 * BLEED_PX]);
    expect(new Set(cut(sheet, 0, 0, BLEED_PX, sheet.height))).toEqual(new Set([255]));
    expect(codes(made)).toContain('bleed-empty');
  });

  it('runs on outwards from the edge when asked', async () => {
    const made = await make({ sheet: { ...BARE, bleedMm: 3, bleedFrom: 'edge' } }, 'tiff', 'png');
    const sheet = await readGrey(bytesOf(made, 'Sampler-30x20mm-3-Soot.tif'));
    const plate = coverageOfPng(bytesOf(made, 'plate-3-soot.png'));
    const row = 190;
    expect(plate.data[row * 360]).toBe(255);
    expect(new Set(cut(sheet, 0, row + BLEED_PX, BLEED_PX, 1))).toEqual(new Set([0]));
    expect(codes(made)).not.toContain('bleed-empty');
  });

  it('is cut off the PNGs of art that has it', async () => {
    const made = await make(
      { sheet: { ...BARE, bleedMm: 3 }, drawing: { artAt: 'bleed' } },
      'png',
      'tiff',
      'pdf',
    );
    const png = coverageOfPng(bytesOf(made, 'plate-1-straw.png'));
    const sheet = await readGrey(bytesOf(made, 'Sampler-30x20mm-1-Straw.tif'));
    expect([png.width, png.height]).toEqual([360 - 2 * BLEED_PX, 240 - 2 * BLEED_PX]);
    expect([sheet.width, sheet.height]).toEqual([360, 240]);
    expect(digest(cut(sheet, BLEED_PX, BLEED_PX, png.width, png.height))).toBe(
      digest([...png.data].map((value) => 255 - value)),
    );
    const pdf = desk.file('bleed.pdf', bytesOf(made, 'plates.pdf'));
    expect(placeOfTrim(pdf)).toEqual([BLEED_PX, BLEED_PX]);
  });

  it('larger than the art is refused with what to do', async () => {
    await expect(make({ sheet: { bleedMm: 11 }, drawing: { artAt: 'bleed' } }, 'png')).rejects.toThrow(
      /bleed is larger than the drawing.*Make the bleed smaller/,
    );
  });
});

describe('film', () => {
  const film = async (sheet: Settings) =>
    readGrey(bytesOf(await make({ sheet: { ...BARE, ...sheet } }, 'tiff'), 'Sampler-30x20mm-3-Soot.tif'));

  it('is turned over for emulsion down, and back by a mirror', async () => {
    const [up, down, both] = await Promise.all([
      film({}),
      film({ emulsion: 'down' }),
      film({ emulsion: 'down', mirrored: true }),
    ]);
    const turned = Array.from({ length: 240 }, (_, y) => cut(up, 0, y, 360, 1).reverse()).flat();
    expect(digest(down.data)).toBe(digest(turned));
    expect(digest(both.data)).toBe(digest(up.data));
  });

  it('is clear where ink prints when it is a negative', async () => {
    const [plain, negative] = await Promise.all([film({}), film({ negative: true })]);
    expect(digest(negative.data)).toBe(digest([...plain.data].map((value) => 255 - value)));
  });

  it('of one bit says which plates lose their tints', async () => {
    const made = await make({ file: { tiff: 'one-bit', pdf: 'film' } }, 'tiff', 'pdf');
    const lost = made.report.complaints.filter(({ code }) => code === 'tints-lost');
    expect(lost.map(({ message }) => /Plate (\w+)/.exec(message)![1])).toEqual(['straw', 'brick']);
    const soot = await readGrey(bytesOf(made, 'Sampler-30x20mm-3-Soot.tif'));
    expect(new Set(soot.data)).toEqual(new Set([0, 255]));
    const seen = await separated(desk, desk.file('film.pdf', bytesOf(made, 'plates.pdf')), PPI);
    expect(digest(seen.get('soot')!.data)).toBe(digest(soot.data));
  });
});

describe('names', () => {
  it('of files come from the pattern, with numbers where it does not tell plates apart', async () => {
    const made = await make({ file: { fileNames: '{job} {colourway}' } }, 'tiff');
    expect(made.files.map(({ name }) => name)).toEqual([
      'Sampler-A.tif',
      'Sampler-A 2.tif',
      'Sampler-A 3.tif',
    ]);
    expect(codes(made)).toContain('file-names-alike');
  });

  it('of plates can be those of their inks, in any script', async () => {
    const inks = structuredClone(THREE_INKS) as { inks: { name: string }[] };
    inks.inks[1]!.name = 'Ziegel #2 – 赤';
    const made = await make({ inks: inks as Settings, file: { plateNames: 'inks' } }, 'pdf');
    const text = Buffer.from(bytesOf(made, 'plates.pdf')).toString('latin1');
    expect(text).toContain('/DeviceN [/Straw /Ziegel#20#232#20#E2#80#93#20#E8#B5#A4 /Soot]');
  });

  it('that would be one are refused', async () => {
    const inks = structuredClone(THREE_INKS) as { inks: { name: string }[] };
    inks.inks[1]!.name = 'Straw';
    await expect(make({ inks: inks as Settings, file: { plateNames: 'inks' } }, 'pdf')).rejects.toThrow(
      /two plates of the press PDF would be called "Straw"/,
    );
    inks.inks[1]!.name = 'All';
    await expect(make({ inks: inks as Settings, file: { plateNames: 'inks' } }, 'pdf')).rejects.toThrow(
      /"All"/,
    );
  });
});

it('puts the same pages into one TIFF when asked', async () => {
  const [single, together] = await Promise.all([
    make({}, 'tiff'),
    make({ file: { tiffPages: 'together' } }, 'tiff'),
  ]);
  expect(together.files.map(({ name }) => name)).toEqual(['Sampler.tif']);
  const path = desk.file('together.tif', bytesOf(together, 'Sampler.tif'));
  for (const [page, { bytes }] of single.files.entries()) {
    run('tiffcp', `${path},${page}`, `${desk.path}/page.tif`);
    expect(digest((await readGrey(readFileSync(`${desk.path}/page.tif`))).data)).toBe(
      digest((await readGrey(bytes)).data),
    );
  }
});

it('gives layers that show the plates over their paper', async () => {
  const made = await make({}, 'ora', 'png');
  const parts = unzipSync(bytesOf(made, 'Sampler.ora'));
  expect(Object.keys(parts)[0]).toBe('mimetype');
  expect(new TextDecoder().decode(parts.mimetype)).toBe('image/openraster');
  const stack = new TextDecoder().decode(parts['stack.xml']);
  const layers = [...stack.matchAll(/name="([^"]+)" src="([^"]+)".*composite-op="([^"]+)"/g)].map((match) =>
    match.slice(1),
  );
  expect(layers).toEqual([
    ['Soot', 'data/layer3.png', 'svg:multiply'],
    ['Brick', 'data/layer2.png', 'svg:multiply'],
    ['Straw', 'data/layer1.png', 'svg:multiply'],
    ['Paper', 'data/layer0.png', 'svg:src-over'],
  ]);
  const layer = PNG.sync.read(Buffer.from(parts['data/layer1.png']!));
  const plate = coverageOfPng(bytesOf(made, 'plate-1-straw.png'));
  expect(digest(layer.data.filter((_, i) => i % 4 === 3))).toBe(digest(plate.data));
  const merged = PNG.sync.read(Buffer.from(parts['mergedimage.png']!));
  const paper = PNG.sync.read(Buffer.from(parts['data/layer0.png']!));
  const others = ['plate-2-brick.png', 'plate-3-soot.png'].map((name) => coverageOfPng(bytesOf(made, name)));
  const alone = plate.data.findIndex((value, i) => value > 0 && others.every(({ data }) => data[i] === 0));
  expect(alone).toBeGreaterThan(-1);
  const covered = plate.data[alone]! / 255;
  const colour = [0, 1, 2].map((band) => {
    const below = paper.data[band]!;
    return Math.round(below * (1 - covered * (1 - layer.data[band]! / 255)));
  });
  expect([...merged.data.subarray(alone * 4, alone * 4 + 3)]).toEqual(colour);
  expect(PNG.sync.read(Buffer.from(parts['Thumbnails/thumbnail.png']!)).width).toBe(256);
});

it('gives the proof as JPEG with its profile and as PDF at its size', async () => {
  const made = await make({}, 'proof', 'proof-jpeg', 'proof-pdf');
  const jpeg = Buffer.from(bytesOf(made, 'proof.jpg'));
  expect(jpeg.includes('ICC_PROFILE')).toBe(true);
  const pdf = desk.file('proof.pdf', bytesOf(made, 'proof.pdf'));
  expect(run('pdfinfo', pdf)).toMatch(/Page size:\s+86\.4 x 57\.6 pts/);
  run('pdfimages', '-png', pdf, `${desk.path}/proof`);
  const seen = PNG.sync.read(readFileSync(`${desk.path}/proof-000.png`));
  expect(digest(seen.data)).toBe(digest(PNG.sync.read(Buffer.from(bytesOf(made, 'proof.png'))).data));
});

it('gives a sheet for the printer that names order, sheet, marks, coverage and cautions', async () => {
  const made = await make({ sheet: { bleedMm: 3, emulsion: 'down' } }, 'job-sheet');
  const pdf = desk.file('job-sheet.pdf', bytesOf(made, 'job-sheet.pdf'));
  expect(said('qpdf', '--check', pdf).code).toBe(0);
  const text = run('pdftotext', '-layout', pdf, '-');
  for (const { order, id, coveragePercent } of made.report.plates) {
    expect(text).toMatch(new RegExp(`${order}\\s+(Straw|Brick|Soot)`));
    expect(text).toContain(`plate "${id}"`);
    expect(text).toContain(`covers ${coveragePercent.toFixed(1)} % of the trim`);
  }
  expect(text).toMatch(/Trim\s+30\.5 x 20\.3 mm, bleed 3 mm/);
  expect(text).toMatch(/Marks\s+crop, register, names, colour bar/);
  expect(text).toMatch(/Film\s+emulsion down/);
  expect(text).toMatch(/ultraviolet.*\n.*data sheets/);
  expect(run('pdfimages', '-list', pdf).trim().split('\n').slice(2)).toHaveLength(3);
});
