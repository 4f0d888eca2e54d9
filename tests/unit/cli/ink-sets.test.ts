import { afterAll, describe, expect, it } from 'vitest';
import { inkSetsSchema } from '../../../src/graph/ink-sets.ts';
import { shelfCsv } from '../../../src/graph/shelf.ts';
import { DEMO_SHELF } from '../../../src/ink/demo-inks.ts';
import { keyblock, Scratch } from './run.ts';

const scratch = new Scratch();
afterAll(() => scratch.remove());

const file = (name: string, value: unknown) => scratch.file(name, JSON.stringify(value));
const shelf = file('shelf.json', { inks: DEMO_SHELF.inks });
/** The solids of three inks and paper, in every way a colour may be written. */
const wanted = file('wanted.json', [
  [66, 40, 49],
  { lab: [45, -25, -7], weight: 3 },
  { lab: [31, 30, -17] },
  '#f0f0f3',
  { hex: '#f0f0f3' },
]);
const run = (...more: string[]) => keyblock('ink-sets', '--shelf', shelf, '--count', '3', ...more);

describe('ink-sets', () => {
  it('finds the inks whose solids are wanted, as JSON', async () => {
    const { code, stdout, stderr } = await run('--wanted', wanted, '--json');
    expect([code, stderr]).toEqual([0, '']);
    const { sets, tried, everySet } = inkSetsSchema.parse(JSON.parse(stdout));
    expect([sets.length, tried, everySet]).toEqual([8, 286, true]);
    expect(sets[0]!.inks).toEqual(['pantile', 'water-butt', 'damson']);
    expect(sets[0]!.colours.map(({ recipe }) => recipe)).toEqual([
      { pantile: 100 },
      { 'water-butt': 100 },
      { damson: 100 },
      {},
      {},
    ]);
    expect(sets[0]!.mean).toBeLessThan(0.5);
  });

  it('reads colours wanted by area from a file of recipes, a shelf in CSV and another paper', async () => {
    const regions = [
      { id: 'r1', wantedLab: [66, 40, 49], areaMm2: 12 },
      { id: 'r2', wantedLab: [45, -25, -7] },
    ];
    const { code, stdout } = await keyblock(
      ...['ink-sets', '--wanted', file('recipes.json', { regions }), '--count', '2'],
      ...['--shelf', scratch.file('shelf.csv', shelfCsv(DEMO_SHELF))],
      ...['--paper', file('kraft.json', { lab: [66, 8, 22], surface: 'uncoated' })],
    );
    const lines = stdout.trimEnd().split('\n');
    expect(code).toBe(0);
    expect(lines[0]).toMatch(/^\* [a-z-]+, [a-z-]+ +mean +\d+\.\d\d {2}worst +\d+\.\d\d$/);
    expect(lines[8]).toBe('78 sets tried; distances are CIEDE2000');
    expect(lines[9]).toMatch(/^\* \d that the prediction cannot tell apart/);
  });

  it.each([
    [
      'a colour that is none',
      ['--wanted', file('odd.json', ['red'])],
      'odd.json',
      'colours, field 0: write a colour as',
    ],
    ['no colours', ['--wanted', file('none.json', [])], 'none.json', 'there is no colour in it'],
    ['something else', ['--wanted', file('else.json', { a: 1 })], 'else.json', 'colours: '],
    [
      'a paper that is none',
      ['--wanted', wanted, '--paper', file('p.json', { lab: [95, 0, 0] })],
      'p.json',
      'paper, field surface',
    ],
    ['too many inks', ['--wanted', wanted, '--count', '7'], '', '--count takes a number from 1 to 6'],
    ['no wanted', [], '', '--wanted is missing'],
  ])('refuses %s in one line', async (_, more, named, said) => {
    const { code, stdout, stderr } = await run(...more);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stderr).toContain(named);
    expect(stderr).toContain(said);
  });

  it('says when the shelf has too few inks', async () => {
    const small = file('small.json', { inks: DEMO_SHELF.inks.slice(0, 2) });
    const { code, stderr } = await run('--wanted', wanted, '--shelf', small);
    expect(code).toBe(2);
    expect(stderr).toContain('small.json: the shelf has 2 inks, too few for sets of 3; ask for fewer');
  });
});
