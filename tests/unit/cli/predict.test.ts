import { afterAll, describe, expect, it } from 'vitest';
import { predictionsSchema } from '../../../src/graph/predictions.ts';
import { keyblock, Scratch } from './run.ts';

const scratch = new Scratch();
afterAll(() => scratch.remove());

const INKS = {
  paper: { lab: [95, 0, -2], surface: 'coated' },
  inks: [
    { id: 'pantile', name: 'Pantile', lab: [66, 40, 49] },
    { id: 'damson', name: 'Damson', lab: [31, 30, -17] },
    { id: 'rhubarb', name: 'Rhubarb', hex: '#ff0a50' },
  ],
};
const inks = scratch.file('inks.json', JSON.stringify(INKS));
const file = (name: string, value: unknown) => scratch.file(name, JSON.stringify(value));
const RECIPES = [
  {},
  { pantile: 100 },
  { damson: 100, pantile: 0 },
  { pantile: 50, damson: 33.3 },
  { rhubarb: 100 },
];
const recipes = file('recipes.json', RECIPES);

describe('predict', () => {
  it('prints Lab, hex and what a screen can show of each recipe as JSON', async () => {
    const { code, stdout, stderr } = await keyblock('predict', inks, '--recipes', recipes, '--json');
    expect([code, stderr]).toEqual([0, '']);
    const found = predictionsSchema.parse(JSON.parse(stdout));
    expect(found.map(({ recipe }) => recipe)).toEqual(RECIPES);
    expect(found.slice(0, 3).map(({ lab }) => lab)).toEqual([
      [95, 0, -2],
      [66, 40, 49],
      [31, 30, -17],
    ]);
    expect(found[3]!.lab[0]).toBeGreaterThan(50);
    expect(found[3]!.lab[0]).toBeLessThan(80);
    expect(found[4]).toMatchObject({ hex: '#ff0a50', onScreen: true });
    for (const value of found.flatMap(({ lab }) => lab)) expect(value).toBe(Math.round(value * 100) / 100);
  });

  it('prints a table with what to know beside it', async () => {
    const { code, stdout } = await keyblock('predict', inks, '--recipes', recipes);
    const lines = stdout.trimEnd().split('\n');
    expect(code).toBe(0);
    expect(lines[0]).toMatch(/^paper +95\.00 +0\.00 +-2\.00 {2}#eff1f4$/);
    expect(lines[3]).toMatch(/^pantile 50, damson 33\.3 +\d/);
    expect(new Set(lines.slice(0, 5).map((line) => line.indexOf('#'))).size).toBe(1);
    expect(lines[5]).toMatch(/^note: Overprints are predicted/);
  });

  const beyond = {
    ...INKS,
    inks: Array.from({ length: 13 }, (_, i) => ({ id: `i${i}`, name: 'I', hex: '#808080' })),
  };
  const twice = { ...INKS, inks: [INKS.inks[0], INKS.inks[0]] };
  const strange = { ...INKS, measured: [{ inks: ['tin'], lab: [50, 0, 0] }] };

  it.each([
    [
      'an unknown ink',
      inks,
      file('tin.json', [{}, { tin: 5 }]),
      'tin.json',
      'recipe 2: there is no ink "tin"; the ink file holds pantile, damson, rhubarb',
    ],
    ['more than a solid', inks, file('much.json', [{ pantile: 120 }]), 'much.json', '0.pantile: Too big'],
    ['recipes that are no list', inks, file('none.json', { pantile: 1 }), 'none.json', 'expected array'],
    ['no recipes', inks, 'nowhere.json', 'nowhere.json', 'there is no such file'],
    ['13 inks', file('many.json', beyond), recipes, 'many.json', 'inks: Too big'],
    ['one ink twice', file('twice.json', twice), recipes, 'twice.json', 'two inks are called "pantile"'],
    [
      'a reading of another ink',
      file('strange.json', strange),
      recipes,
      'strange.json',
      'there is no ink tin in this print',
    ],
    [
      'no text',
      scratch.file('raw.json', Uint8Array.of(0xff, 0xfe, 0xfd)),
      recipes,
      'raw.json',
      'no text in UTF-8',
    ],
    ['no JSON', scratch.file('half.json', '{"paper":'), recipes, 'half.json', 'not valid JSON'],
  ])('refuses %s in one line that names the file', async (_, inkFile, recipeFile, named, said) => {
    const { code, stdout, stderr } = await keyblock('predict', inkFile, '--recipes', recipeFile, '--json');
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stderr).toContain(named);
    expect(stderr).toContain(said);
  });

  it('says how it is used', async () => {
    const { code, stderr } = await keyblock('predict', inks);
    expect(code).toBe(2);
    expect(stderr).toBe(
      'keyblock: --recipes is missing. Usage: keyblock predict INKS --recipes FILE [--json]\n',
    );
  });
});
