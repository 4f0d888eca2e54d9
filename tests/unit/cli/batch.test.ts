import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { batchSchema } from '../../../src/graph/batch.ts';
import { proposalRulesSchema } from '../../../src/graph/proposal-rules.ts';
import { styleOf } from '../../../src/graph/style.ts';
import { defaultJob } from '../support/jobs.ts';
import { GOOD_SVG, svgOf } from './drawings.ts';
import { keyblock, Scratch } from './run.ts';

const scratch = new Scratch();
const inside = (...parts: string[]) => join(scratch.path, ...parts);
const summary = (folder: string) =>
  batchSchema.parse(JSON.parse(readFileSync(inside(folder, 'batch.json'), 'utf8')));

const palette = [{ recipe: { straw: 60 } }, { recipe: { brick: 100 } }, { recipe: { soot: 50, straw: 30 } }];
const rules = proposalRulesSchema.parse({ palette });

beforeAll(() => {
  scratch.file('packets.style.json', JSON.stringify(styleOf(defaultJob({}), 'Packets', rules)));
  scratch.file('tray.svg', GOOD_SVG);
  scratch.file(
    'bed.svg',
    svgOf('20mm', '<path d="M1 1h8v8H1zM5 1v8" fill="none" stroke="#000" stroke-width="0.4"/>'),
  );
  scratch.file('note.png', 'sow in March');
});
afterAll(() => scratch.remove());

const drawings = ['tray.svg', 'note.png', 'bed.svg'].map((name) => join(scratch.path, name));
const run = (...args: string[]) => keyblock('batch', inside('packets.style.json'), ...drawings, ...args);

describe('batch', () => {
  it('renders a series, goes on past a bad file and tells of each', async () => {
    const { code, stdout, stderr } = await run('--out', inside('all'), '--ppi', '200');
    expect(code).toBe(1);
    expect(stderr).toMatch(/note\.png: not a picture/);
    expect(stdout).toMatch(/tray\.svg +done/);
    const { style, items } = summary('all');
    expect(style).toBe('Packets');
    expect(items.map(({ state, folder }) => [state, folder])).toEqual([
      ['done', 'tray'],
      ['failed', null],
      ['done', 'bed'],
    ]);
    expect(items[1]!.message).toMatch(/PNG, JPEG/);
    expect(scratch.list('all')).toEqual(['batch.json', 'bed', 'contact-sheet.png', 'tray']);
    expect(scratch.list('all/bed')).toEqual([
      'assets',
      'item.json',
      'job.json',
      'plate-1-straw.png',
      'plate-2-brick.png',
      'plate-3-soot.png',
      'proof.png',
      'report.json',
    ]);
  });

  it('prints neighbours in recipes of the style that differ', async () => {
    await run('--out', inside('rules'), '--ppi', '200');
    const report = JSON.parse(readFileSync(inside('rules', 'bed', 'report.json'), 'utf8'));
    const used = report.regions.map(({ recipe }: { recipe: object }) => JSON.stringify(recipe));
    expect(new Set(used).size).toBeGreaterThan(1);
    for (const recipe of used) expect(palette.map((entry) => JSON.stringify(entry.recipe))).toContain(recipe);
  });

  it('makes nothing twice that is made of the same, and anew what is not', async () => {
    await run('--out', inside('twice'), '--ppi', '200');
    const stamp = () => readFileSync(inside('twice', 'tray', 'report.json'), 'utf8');
    const before = stamp();
    await run('--out', inside('twice'), '--ppi', '200');
    expect(stamp()).toBe(before);
    await run('--out', inside('twice'), '--ppi', '250');
    expect(JSON.parse(stamp()).drawing.ppi).toBe(250);
  });

  it('shares a series out, and the last run tells of all', async () => {
    const first = await run('--out', inside('shared'), '--ppi', '200', '--shard', '1/2');
    expect(scratch.list('shared')).toContain('tray');
    expect(scratch.list('shared')).toContain('bed');
    expect(first.code).toBe(0);
    await run('--out', inside('shared'), '--ppi', '200', '--shard', '2/2');
    expect(summary('shared').items.map(({ state }) => state)).toEqual(['done', 'failed', 'done']);
  });

  it.each([
    [['--shard', '3/2', '--out', 'x'], /shard/],
    [['--shard', 'half', '--out', 'x'], /I\/N/],
    [[], /--out/],
    [['--roughs', '/nowhere', '--out', 'x'], /no folder/],
  ])('refuses %j in one line', async (args, message) => {
    const { code, stderr } = await run(...args);
    expect(code).toBe(2);
    expect(stderr.trim()).toMatch(message);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });

  it('refuses a style that is none', async () => {
    const bad = scratch.file('bad.style.json', '{"format":"keyblock-job"}');
    const { code, stderr } = await keyblock('batch', bad, drawings[0]!, '--out', inside('x'));
    expect([code, stderr]).toEqual([2, expect.stringMatching(/bad\.style\.json: this is no house style/)]);
  });
});
