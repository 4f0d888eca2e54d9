import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { matchesSchema } from '../../../src/graph/matches.ts';
import { parseJob } from '../../../src/graph/parse-job.ts';
import { reportSchema } from '../../../src/graph/report.ts';
import { nodeKinds } from '../../../src/nodes/registry.ts';
import { GOOD_SVG } from './drawings.ts';
import { keyblock, Scratch } from './run.ts';

const scratch = new Scratch();
const inside = (...parts: string[]) => join(scratch.path, ...parts);
const json = (...parts: string[]) => JSON.parse(readFileSync(inside(...parts), 'utf8'));

/** The drawing of GOOD_SVG in colour: ground, ring, its middle left transparent, square. */
const ROUGH = `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20">
  <path fill="#e8c840" fill-rule="evenodd" d="M0 0h20v20H0z M8 6a2 2 0 0 1 0 4 2 2 0 0 1 0-4z"/>
  <path fill="#b04030" fill-rule="evenodd" d="M8 3a5 5 0 0 1 0 10 5 5 0 0 1 0-10z M8 6a2 2 0 0 1 0 4 2 2 0 0 1 0-4z"/>
  <path fill="#302c2c" d="M14 14h9v9h-9z"/>
</svg>`;

const INKS = {
  paper: { lab: [93, 0, 6], surface: 'coated' },
  takeUp: 0.9,
  inks: [
    { id: 'straw', name: 'Straw', lab: [85, 2, 60] },
    { id: 'brick', name: 'Brick', lab: [50, 50, 30] },
    { id: 'soot', name: 'Soot', lab: [20, 1, 1], opacity: 0.02 },
  ],
};

beforeAll(() => {
  scratch.file('tray.svg', GOOD_SVG);
  scratch.file('sketch.svg', ROUGH);
  scratch.file('inks.json', JSON.stringify(INKS));
});

afterAll(() => scratch.remove());

const match = (rough: string, out: string, ...more: string[]) =>
  keyblock(
    'match',
    inside('tray.svg'),
    inside(rough),
    '--inks',
    inside('inks.json'),
    '--out',
    inside(out),
    '--ppi',
    '300',
    ...more,
  );

describe('match', () => {
  it('writes recipes and a job that renders them', async () => {
    const { code, stdout, stderr } = await match('sketch.svg', 'all', '--alternatives', '2', '--json');
    expect([code, stderr]).toEqual([0, '']);
    expect(scratch.list('all')).toEqual(['assets', 'job.json', 'recipes.json']);
    expect(scratch.list('all/assets')).toEqual(['sketch.svg', 'tray.svg']);
    const recipes = matchesSchema.parse(json('all', 'recipes.json'));
    expect(JSON.parse(stdout)).toEqual(recipes);
    expect(recipes.regions).toHaveLength(3);
    expect(recipes.bare).toHaveLength(1);
    for (const { alternatives } of recipes.regions) expect(alternatives).toHaveLength(2);
    const [ground] = recipes.regions.toSorted((one, other) => other.areaMm2 - one.areaMm2);
    expect(Object.keys(ground!.recipe)).toContain('straw');

    const job = parseJob(readFileSync(inside('all', 'job.json'), 'utf8'), nodeKinds);
    const settings = (kind: string) => job.graph.nodes.find((node) => node.kind === kind)!.settings;
    expect(settings('paper-stock')).toEqual(INKS.paper);
    expect(settings('ink-set')).toMatchObject({ readOn: INKS.paper, takeUpPercent: 90 });

    const rendered = await keyblock('render', inside('all', 'job.json'), '--out', inside('rendered'));
    expect([rendered.code, rendered.stderr]).toEqual([0, '']);
    const report = reportSchema.parse(json('rendered', 'report.json'));
    const printed = Object.fromEntries(report.regions.map(({ id, recipe }) => [id, recipe]));
    expect(printed).toEqual(
      Object.fromEntries([
        ...recipes.regions.map(({ id, recipe }) => [id, recipe]),
        ...recipes.bare.map((id) => [id, {}]),
      ]),
    );
  });

  it('takes the tint step', async () => {
    const { code, stdout } = await match('sketch.svg', 'steps', '--step', '35', '--json');
    expect(code).toBe(0);
    const { regions } = matchesSchema.parse(JSON.parse(stdout));
    for (const { recipe } of regions)
      for (const tint of Object.values(recipe)) expect([15, 50, 85, 100]).toContain(tint);
  });

  it('may be given the drawing as its own rough, which paints nothing', async () => {
    const { code, stdout } = await match('tray.svg', 'own', '--json');
    expect(code).toBe(1);
    expect(scratch.list('own/assets')).toEqual(['tray.svg']);
    const { regions, bare } = matchesSchema.parse(JSON.parse(stdout));
    expect([regions.length, bare.length]).toEqual([0, 4]);
  });

  it('names the rough when it cannot be read', async () => {
    scratch.file('notes.txt', 'sow in March');
    const { code, stderr } = await match('notes.txt', 'none');
    expect(code).toBe(2);
    expect(stderr).toMatch(/^keyblock: \S*notes\.txt: [^\n]+\n$/);
    expect(scratch.list('none')).toEqual([]);
  });

  it('asks for what is missing', async () => {
    const { code, stderr } = await keyblock('match', inside('tray.svg'), inside('sketch.svg'), '--out', 'x');
    expect([code, stderr]).toEqual([2, expect.stringContaining('--inks and --out are needed')]);
    const missing = await match('nothing.svg', 'none');
    expect([missing.code, missing.stderr]).toEqual([
      2,
      expect.stringContaining('nothing.svg: there is no such file'),
    ]);
  });
});

describe('render --rough', () => {
  it('gives a job another rough', async () => {
    scratch.file('plain.svg', ROUGH.replaceAll(/#[0-9a-f]{6}/g, '#ffffff'));
    const { code } = await keyblock(
      'render',
      inside('all', 'job.json'),
      '--rough',
      inside('plain.svg'),
      '--out',
      inside('bare'),
    );
    expect(code).toBe(0);
    const report = reportSchema.parse(json('bare', 'report.json'));
    for (const { recipe } of report.regions) expect(recipe).toEqual({});
    expect(report.complaints.map((complaint) => complaint.code)).toContain('rough-one-colour');
  });
});
