import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { matchesSchema } from '../../../src/graph/matches.ts';
import { GOOD_SVG, svgOf } from './drawings.ts';
import { keyblock, Scratch } from './run.ts';

const scratch = new Scratch();
const inside = (...parts: string[]) => join(scratch.path, ...parts);
const INKS = {
  paper: { lab: [95, 0.5, -2], surface: 'uncoated' },
  inks: [
    { id: 'pantile', name: 'Pantile', lab: [66, 40, 49] },
    { id: 'damson', name: 'Damson', lab: [31, 30, -17] },
  ],
};
/** Orange all over, the inner circle purple. */
const ROUGH = svgOf(
  '20mm',
  '<path d="M0 0h10v10H0z" fill="#f08a50"/><circle cx="4" cy="4" r="1" fill="#6b3468"/>',
);

beforeAll(() => {
  scratch.file('tray.svg', GOOD_SVG);
  scratch.file('rough.svg', ROUGH);
  scratch.file('inks.json', JSON.stringify(INKS));
  scratch.file('note.png', 'sow in March');
});
afterAll(() => scratch.remove());

const match = (...args: string[]) => keyblock('match', inside('tray.svg'), inside('rough.svg'), ...args);

describe('match', () => {
  it('writes recipes and a job that renders in them', async () => {
    const { code, stdout } = await match('--inks', inside('inks.json'), '--out', inside('m'), '--ppi', '300');
    expect(code).toBe(0);
    expect(stdout).toMatch(/4 regions matched, 0 not in the rough/);
    expect(scratch.list('m')).toEqual(['assets', 'job.json', 'recipes.json']);
    const found = matchesSchema.parse(JSON.parse(readFileSync(inside('m', 'recipes.json'), 'utf8')));
    const inner = found.regions.toSorted((a, b) => a.areaMm2 - b.areaMm2)[0]!;
    expect(inner.recipe.damson).toBeGreaterThanOrEqual(75);
    const rendered = await keyblock('render', inside('m', 'job.json'), '--out', inside('r'), '--json');
    const report = JSON.parse(rendered.stdout);
    for (const { id, recipe } of found.regions)
      expect(report.regions.find((region: { id: string }) => region.id === id).recipe).toEqual(recipe);
  });

  it('names other recipes on request', async () => {
    const { stdout } = await match(
      '--inks',
      inside('inks.json'),
      '--out',
      inside('m2'),
      '--alternatives',
      '2',
      '--json',
    );
    for (const region of matchesSchema.parse(JSON.parse(stdout)).regions)
      expect(region.alternatives).toHaveLength(2);
  });

  it.each([
    ['no inks', () => match('--out', inside('x')), /--inks/],
    [
      'an ink file that is none',
      () => match('--inks', inside('note.png'), '--out', inside('x')),
      /note\.png: .*JSON/,
    ],
    [
      'a rough that is no picture',
      () =>
        keyblock(
          'match',
          inside('tray.svg'),
          inside('note.png'),
          '--inks',
          inside('inks.json'),
          '--out',
          inside('x'),
        ),
      /note\.png: not a picture/,
    ],
    [
      'two inks of one id',
      () => {
        const twice = scratch.file(
          'twice.json',
          JSON.stringify({ ...INKS, inks: [INKS.inks[0], INKS.inks[0]] }),
        );
        return match('--inks', twice, '--out', inside('x'));
      },
      /twice\.json: .*pantile/,
    ],
  ])('refuses %s in one line', async (_, run, message) => {
    const { code, stderr } = await run();
    expect(code).toBe(2);
    expect(stderr.trim()).toMatch(message);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});

describe('render with a rough', () => {
  it('matches it in a job that had none', async () => {
    await match('--inks', inside('inks.json'), '--out', inside('m3'), '--ppi', '200');
    const { code, stdout } = await keyblock(
      'render',
      inside('m3', 'job.json'),
      '--rough',
      scratch.file('blue.svg', svgOf('20mm', '<path d="M0 0h10v10H0z" fill="#6b3468"/>')),
      '--out',
      inside('r3'),
      '--json',
    );
    expect(code).toBe(0);
    for (const { recipe } of JSON.parse(stdout).regions) expect(recipe.damson).toBeGreaterThanOrEqual(75);
  });
});

describe('chart', () => {
  it('writes the press test form and what it is predicted to print', async () => {
    await match('--inks', inside('inks.json'), '--out', inside('m4'), '--ppi', '200');
    const { code } = await keyblock('chart', inside('m4', 'job.json'), '--ppi', '150', '--out', inside('c'));
    expect(code).toBe(0);
    expect(scratch.list('c')).toEqual([
      'chart.json',
      'chart.png',
      'form-1-pantile.pdf',
      'form-1-pantile.png',
      'form-2-damson.pdf',
      'form-2-damson.png',
    ]);
    const { patches } = JSON.parse(readFileSync(inside('c', 'chart.json'), 'utf8'));
    const solid = patches.find(({ id }: { id: string }) => id === 'pantile');
    expect(solid.recipe).toEqual({ pantile: 100 });
    expect(solid.lab.map(Math.round)).toEqual([66, 40, 49]);
  });

  it.each([
    [['--page', 'A4'], /210x297/],
    [['--page', '60x80'], /needs a page/],
    [['--ppi', '7'], /ppi/],
  ])('refuses %j in one line', async (args, message) => {
    const { code, stderr } = await keyblock('chart', inside('m4', 'job.json'), '--out', inside('x'), ...args);
    expect([code, stderr]).toEqual([2, expect.stringMatching(message)]);
  });
});
