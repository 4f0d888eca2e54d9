import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { defaultGraph, newJob } from '../../../src/graph/default-graph.ts';
import type { Job } from '../../../src/graph/job.ts';
import { jsonSchemas } from '../../../src/graph/json-schema.ts';
import { hashBytes } from '../../../src/graph/keys.ts';
import { regionsFileSchema, reportSchema } from '../../../src/graph/report.ts';
import { surveySchema } from '../../../src/graph/survey.ts';
import { meantOf } from '../../../src/press/meant.ts';
import { THREE_INKS } from '../support/jobs.ts';
import { GOOD_SVG, svgOf } from './drawings.ts';
import { keyblock, Scratch } from './run.ts';

const scratch = new Scratch();
const svg = new TextEncoder().encode(GOOD_SVG);
const inside = (...parts: string[]) => join(scratch.path, ...parts);
const json = (...parts: string[]) => JSON.parse(readFileSync(inside(...parts), 'utf8'));

/** The sampler in two colourways, grain off so that tints can be read. */
function sampler(): Job {
  const hash = hashBytes(svg);
  const graph = defaultGraph({ asset: hash, ppi: 300 }, THREE_INKS);
  graph.nodes.find(({ id }) => id === 'plate-grain')!.bypassed = true;
  const job = newJob('Seed tray', graph, { [hash]: { file: 'tray.svg' } });
  job.colourways = [
    { id: 'a', name: 'Morning', recipes: {}, others: { straw: 60 } },
    { id: 'b', name: 'Evening', recipes: {}, others: { brick: 40 } },
  ];
  return job;
}

beforeAll(() => {
  mkdirSync(inside('assets'));
  writeFileSync(inside('assets', 'tray.svg'), svg);
  scratch.file('tray.json', JSON.stringify(sampler()));
});

afterAll(() => scratch.remove());

describe('render', () => {
  it('writes plates, proof and report, and says the same on stdout', async () => {
    const { code, stdout, stderr } = await keyblock(
      'render',
      inside('tray.json'),
      '--out',
      inside('all'),
      '--json',
    );
    expect([code, stderr]).toEqual([0, '']);
    expect(scratch.list('all')).toEqual([
      'plate-1-straw.png',
      'plate-2-brick.png',
      'plate-3-soot.png',
      'proof.png',
      'report.json',
    ]);
    const report = reportSchema.parse(json('all', 'report.json'));
    expect(JSON.parse(stdout)).toEqual(report);
    expect(report.drawing).toEqual({ width: 236, height: 236, ppi: 300, mm: [19.981, 19.981] });
    expect(report.regions).toHaveLength(4);
    expect(report.plates.map(({ id, ink, order, pass, file }) => [id, ink, order, pass, file])).toEqual([
      ['straw', 'straw', 1, 1, 'plate-1-straw.png'],
      ['brick', 'brick', 2, 2, 'plate-2-brick.png'],
      ['soot', 'soot', 3, 3, 'plate-3-soot.png'],
    ]);
    expect(report.peakBytes).toBeGreaterThan(50_000_000);
    expect(Object.keys(report.timings)).toContain('closed-regions');
  });

  it('says the coverage of the plates it wrote', async () => {
    await keyblock('render', inside('tray.json'), '--out', inside('coverage'), '--formats', 'png');
    const report = reportSchema.parse(json('coverage', 'report.json'));
    for (const { file, coveragePercent } of report.plates) {
      const { data, width, height } = PNG.sync.read(readFileSync(inside('coverage', file!)));
      let sum = 0;
      for (let p = 0; p < data.length; p += 4) sum += 255 - data[p]!;
      expect(coveragePercent).toBeCloseTo((sum * 100) / (255 * width * height), 3);
    }
    expect(scratch.list('coverage')).not.toContain('proof.png');
  });

  it('takes a colourway by name or id', async () => {
    for (const name of ['Evening', 'b']) {
      await keyblock(
        'render',
        inside('tray.json'),
        '--out',
        inside(`as-${name}`),
        '--colourway',
        name,
        '--formats',
        'png',
      );
      const { regions } = reportSchema.parse(json(`as-${name}`, 'report.json'));
      expect(regions.map(({ recipe }) => recipe)).toEqual(Array(4).fill({ brick: 40 }));
    }
    const wrong = await keyblock(
      'render',
      inside('tray.json'),
      '--out',
      inside('none'),
      '--colourway',
      'Noon',
    );
    expect(wrong.stderr).toContain('no colourway "Noon"; the job holds "Morning", "Evening"');
    expect(wrong.code).toBe(2);
  });

  it('names grey PDFs after job, size, order and ink', async () => {
    await keyblock('render', inside('tray.json'), '--out', inside('pdf'), '--formats', 'grey-pdf');
    expect(scratch.list('pdf')).toEqual([
      'Seed-tray-20x20mm-1-Straw.pdf',
      'Seed-tray-20x20mm-2-Brick.pdf',
      'Seed-tray-20x20mm-3-Soot.pdf',
      'report.json',
    ]);
    expect(reportSchema.parse(json('pdf', 'report.json')).plates.map(({ file }) => file)).toEqual([
      null,
      null,
      null,
    ]);
  });

  it('puts another drawing in the place of the first', async () => {
    const other = scratch.file(
      'other.svg',
      svgOf('20mm', '<path d="M0 5h10" stroke="#000" stroke-width="0.4"/>'),
    );
    const { code } = await keyblock(
      'render',
      inside('tray.json'),
      '--drawing',
      other,
      '--out',
      inside('other'),
      '--formats',
      'png',
    );
    expect(code).toBe(0);
    expect(reportSchema.parse(json('other', 'report.json')).regions).toHaveLength(2);
  });

  it('opens a packed job', async () => {
    const packed = zipSync({ 'job.json': readFileSync(inside('tray.json')), 'assets/tray.svg': svg });
    const path = scratch.file('tray.keyblock', packed);
    const { code } = await keyblock('render', path, '--out', inside('packed'), '--formats', 'png');
    expect(code).toBe(0);
    expect(readFileSync(inside('packed', 'plate-1-straw.png'))).toEqual(
      readFileSync(inside('all', 'plate-1-straw.png')),
    );
  });

  it('refuses an asset that is not the one the job was saved with', async () => {
    const job = JSON.stringify(sampler()).replaceAll('tray.svg', 'swapped.svg');
    writeFileSync(inside('assets', 'swapped.svg'), svgOf('20mm', ''));
    const path = scratch.file('swapped.json', job);
    const { code, stderr } = await keyblock('render', path, '--out', inside('swapped'));
    expect(stderr).toContain('assets/swapped.svg is not the file the job was saved with');
    expect(code).toBe(2);
  });

  it('renders but exits with 1 when a simulation runs into the Press file', async () => {
    const job = sampler();
    job.graph.wires.find(({ to }) => to.node === 'press-file')!.from = {
      node: 'register-offset',
      port: 'plates',
    };
    const path = scratch.file('baked.json', JSON.stringify(job));
    const { code } = await keyblock('render', path, '--out', inside('baked'));
    expect(code).toBe(1);
    expect(scratch.list('baked')).toContain('plate-1-straw.png');
    const codes = reportSchema
      .parse(json('baked', 'report.json'))
      .complaints.map((complaint) => complaint.code);
    expect(codes).toContain('simulation-delivered');
  });

  it('names the rough that is not there', async () => {
    const { code, stderr } = await keyblock('render', inside('tray.json'), '--rough', 'rough.png');
    expect(stderr).toContain('rough.png: there is no such file');
    expect(code).toBe(2);
  });
});

describe('regions', () => {
  it('writes the label picture and the table', async () => {
    const path = scratch.file('tray.svg', svg);
    const { code, stdout } = await keyblock(
      'regions',
      path,
      '--out',
      inside('regions'),
      '--ppi',
      '300',
      '--json',
    );
    expect(code).toBe(0);
    const found = regionsFileSchema.parse(json('regions', 'regions.json'));
    expect(JSON.parse(stdout)).toEqual(found);
    expect(found.regions.map(({ id, touchesFrame }) => [id, touchesFrame])).toEqual([
      ['r1', true],
      ['r2', false],
      ['r3', false],
      ['r4', true],
    ]);
    const labels = PNG.sync.read(readFileSync(inside('regions', 'labels.png')), {
      skipRescale: true,
    } as object);
    const values = labels.data as unknown as Uint16Array;
    for (const { label, anchorMm } of found.regions) {
      const [x, y] = anchorMm.map((mm) => Math.floor((mm * 300) / 25.4));
      expect(values[(y! * labels.width + x!) * 4]).toBe(label);
    }
  });

  it('asks for a size that the file does not tell, and takes one that is given', async () => {
    const path = scratch.file('sizeless.svg', GOOD_SVG.replaceAll('20mm', '200'));
    await keyblock('regions', path, '--out', inside('sizeless'));
    const assumed = regionsFileSchema.parse(json('sizeless', 'regions.json'));
    expect(assumed.complaints.map(({ code }) => code)).toContain('size-assumed');
    await keyblock('regions', path, '--out', inside('sized'), '--width', '30', '--ppi', '300');
    const sized = regionsFileSchema.parse(json('sized', 'regions.json'));
    expect(sized.complaints.map(({ code }) => code)).not.toContain('size-assumed');
    expect([sized.drawing.width, sized.drawing.ppi]).toEqual([354, 300]);
  });
});

describe('survey', () => {
  it('prints what an import finds as JSON', async () => {
    const path = scratch.file('surveyed.svg', svg);
    const { code, stdout, stderr } = await keyblock('survey', path, '--ppi', '300', '--json');
    expect([code, stderr]).toEqual([0, '']);
    const found = surveySchema.parse(JSON.parse(stdout));
    expect(found.drawing).toEqual({ width: 236, height: 236, ppi: 300, mm: [19.981, 19.981] });
    expect(found.line.widthsMm!.middle).toBeCloseTo(0.5, 1);
    expect(found.cleaning!.threshold.how).toBe('half');
    expect(found.openings!.closed).toEqual([]);
  });

  it('says it in lines, and takes specks and gap from the command line', async () => {
    const dusty = GOOD_SVG.replace('</g>', '<path d="M15 3h0.3" stroke-width="0.3"/></g>');
    const path = scratch.file('dusty.svg', dusty);
    const kept = await keyblock('survey', path, '--ppi', '300');
    expect(kept.stdout).toContain('specks     0 went');
    const swept = await keyblock('survey', path, '--ppi', '300', '--speck', '0.2', '--gap', '0');
    expect(swept.code).toBe(0);
    expect(swept.stdout).toContain('size       236 x 236 px at 300 ppi, 19.981 x 19.981 mm');
    expect(swept.stdout).toContain('specks     1 went');
    const wrong = await keyblock('survey', path, '--speck', 'much');
    expect([wrong.code, wrong.stderr]).toEqual([
      2,
      'keyblock: --speck takes a number from 0 to 5, not "much"\n',
    ]);
  });
});

describe('nodes and schemas', () => {
  it('lists every kind with ports, settings and units', async () => {
    const { code, stdout } = await keyblock('nodes', '--json');
    expect(code).toBe(0);
    const kinds = JSON.parse(stdout) as {
      kind: string;
      settings: { properties: Record<string, { unit?: string }> };
    }[];
    expect(kinds.map(({ kind }) => kind)).toContain('plate-grain');
    expect(kinds.find(({ kind }) => kind === 'plate-grain')!.settings.properties.sizeMm!.unit).toBe('mm');
    const text = await keyblock('nodes');
    expect(text.stdout).toContain('Plate grain (plate-grain)');
  });

  it('writes the shapes as JSON Schema', async () => {
    const { code } = await keyblock('schemas', '--out', inside('schemas'));
    expect(code).toBe(0);
    expect(scratch.list('schemas')).toEqual(
      Object.keys(jsonSchemas())
        .map((name) => `${name}.schema.json`)
        .sort(),
    );
    expect(json('schemas', 'job.schema.json').properties.format.const).toBe('keyblock-job');
  });
});

describe('check', () => {
  it('ends with 1 where a press would fail, and says where', async () => {
    const job = sampler();
    job.colourways[0]!.others = { straw: 6 };
    scratch.file('pale.json', JSON.stringify(job));
    const checked = await keyblock('check', inside('pale.json'), '--press', 'hand-screen');
    expect(checked.code).toBe(1);
    expect(checked.stdout).toMatch(/^Screen, by hand\n/);
    expect(checked.stdout).toMatch(/error: .*\(at [\d.]+, [\d.]+ mm\)/);
  });

  it('ends with 0 once what fails is meant', async () => {
    const { stdout } = await keyblock('check', inside('tray.json'), '--press', 'hand-screen', '--json');
    const { complaints } = reportSchema.parse(JSON.parse(stdout));
    const meant = complaints.filter(({ severity }) => severity === 'error').map(meantOf);
    expect(meant.length).toBeGreaterThan(0);
    scratch.file('meant.json', JSON.stringify({ ...sampler(), meant }));
    const again = await keyblock('check', inside('meant.json'), '--press', 'hand-screen');
    expect(again.code).toBe(0);
    expect(again.stdout).toContain('meant: ');
  });

  it('writes no file, and takes a press from one', async () => {
    const own = { name: 'The shed', figures: { leastPositiveMm: { value: 5, source: 'own-test' } } };
    scratch.file('shed.json', JSON.stringify(own));
    const before = scratch.list('.');
    const checked = await keyblock('check', inside('tray.json'), '--press', inside('shed.json'));
    expect(checked.stdout).toMatch(/^The shed\n/);
    expect(checked.stdout).toContain('the press holds 5 mm');
    expect(scratch.list('.')).toEqual(before);
  });

  it('says which presses there are', async () => {
    const wrong = await keyblock('check', inside('tray.json'), '--press', 'mangle');
    expect([wrong.code, wrong.stderr]).toEqual([2, expect.stringContaining('stencil, hand-screen')]);
  });
});
