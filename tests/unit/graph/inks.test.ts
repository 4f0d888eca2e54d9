import { describe, expect, it } from 'vitest';
import {
  type hexSchema,
  idSchema,
  inkFileSchema,
  inkSchema,
  type labSchema,
} from '../../../src/graph/inks.ts';

const fits = (
  schema: typeof idSchema | typeof labSchema | typeof inkSchema | typeof hexSchema,
  value: unknown,
) => schema.safeParse(value).success;

describe('an id', () => {
  it.each(['a', 'r1', 'water-butt', 'Key.2', 'x_y', 'a'.repeat(64)])('may be %s', (id) => {
    expect(fits(idSchema, id)).toBe(true);
  });

  it.each([
    '',
    ' ',
    '.hidden',
    '-a',
    '../x',
    'a/b',
    'a b',
    'a\n',
    'é',
    '__proto__',
    'constructor',
    'prototype',
    'a'.repeat(65),
  ])('may not be %j', (id) => {
    expect(fits(idSchema, id)).toBe(false);
  });
});

describe('an ink', () => {
  const ink = { id: 'soot', name: 'Soot' };

  it('has its colour as Lab or as hex, and once', () => {
    expect(fits(inkSchema, { ...ink, lab: [20, 1, 1] })).toBe(true);
    expect(fits(inkSchema, { ...ink, hex: '#20201E' })).toBe(true);
    expect(fits(inkSchema, ink)).toBe(false);
    expect(fits(inkSchema, { ...ink, lab: [20, 1, 1], hex: '#20201e' })).toBe(false);
  });

  it('is nearly transparent unless it says otherwise', () => {
    expect(inkSchema.parse({ ...ink, hex: '#20201e' }).opacity).toBe(0.005);
  });

  it.each([
    ['opacity', 1.01],
    ['opacity', -0.01],
    ['gain', 0.51],
    ['lab', [151, 0, 0]],
    ['lab', [50, 0]],
    ['hex', '20201e'],
    ['hex', '#fff'],
    ['name', ''],
    ['shine', 1],
  ])('may not have %s = %j', (field, value) => {
    const colour = field === 'hex' ? {} : { hex: '#20201e' };
    const lab = field === 'lab' ? { hex: undefined } : {};
    expect(fits(inkSchema, { ...ink, ...colour, ...lab, [field]: value })).toBe(false);
  });
});

describe('an ink file', () => {
  const file = {
    paper: { lab: [95, 0, -2], surface: 'uncoated' },
    inks: [{ id: 'soot', name: 'Soot', hex: '#20201e' }],
  };

  it('has a take-up of 0.95 and nothing measured unless it says otherwise', () => {
    expect(inkFileSchema.parse(file)).toMatchObject({ takeUp: 0.95, measured: [] });
  });

  it('has 1 to 12 inks', () => {
    const some = (count: number) => ({ ...file, inks: Array.from({ length: count }, () => file.inks[0]) });
    expect([0, 1, 12, 13].map((count) => inkFileSchema.safeParse(some(count)).success)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });
});
