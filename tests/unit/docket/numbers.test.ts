import { describe, expect, it } from 'vitest';
import type { NumberField } from '../../../src/docket/fields.ts';
import {
  fromPlace,
  rangeOf,
  readNumber,
  shown,
  snapped,
  stepOf,
  toPlace,
} from '../../../src/docket/numbers.ts';

const SIZE: NumberField = {
  as: 'number',
  name: 'sizeMm',
  title: 'Size',
  help: '',
  usual: 0.35,
  least: 0.05,
  most: 20,
  whole: false,
  unit: 'mm',
  nullable: false,
};
const PERCENT: NumberField = { ...SIZE, title: 'Strength', least: 0, most: 100, unit: '%', usual: 35 };

describe('a typed number', () => {
  it('may have a comma, a unit or a real minus sign', () => {
    expect(readNumber(SIZE, ' 0,5 mm ')).toEqual({ value: 0.5 });
    expect(readNumber({ ...SIZE, least: -1 }, '\u22120.2')).toEqual({ value: -0.2 });
    expect(readNumber(PERCENT, '40%')).toEqual({ value: 40 });
  });

  it.each(['', 'abc', '0x10', '1e3', '1 2', '-', 'NaN', '21', '0.01', '--1'])(
    'is refused as "%s"',
    (typed) => {
      expect(readNumber(SIZE, typed)).toEqual({ wrong: 'Size takes 0.05 to 20\u00a0mm.' });
    },
  );

  it('may be nothing where the setting may', () => {
    expect(readNumber({ ...SIZE, nullable: true }, ' ')).toEqual({ value: null });
    expect(rangeOf({ ...SIZE, nullable: true })).toBe('Size takes 0.05 to 20\u00a0mm, or nothing.');
  });

  it('must be whole where the setting must', () => {
    const whole = { ...SIZE, title: 'Pass', whole: true, least: 1, most: 12, unit: '' };
    expect(readNumber(whole, '2.5')).toEqual({ wrong: 'Pass takes a whole number from 1 to 12.' });
    expect(readNumber(whole, '3')).toEqual({ value: 3 });
  });
});

describe('a shown number', () => {
  it('has its unit as a printer writes it', () => {
    expect(shown(0.30000000000000004, 'mm')).toBe('0.3\u00a0mm');
    expect(shown(0.3, 'mm2')).toBe('0.3\u00a0mm\u00b2');
    expect(shown(-0.05, 'deg')).toBe('\u22120.05\u00b0');
    expect(shown(7, '')).toBe('7');
  });
});

describe('steps', () => {
  it('are finer where the range is small', () => {
    expect(stepOf(PERCENT)).toBe(1);
    expect(stepOf(SIZE)).toBe(0.05);
    expect(stepOf({ ...SIZE, least: -0.5, most: 0.5 })).toBe(0.01);
  });

  it('end at the ends of the range', () => {
    expect(snapped(SIZE, 0.36)).toBe(0.35);
    expect(snapped(SIZE, -3)).toBe(0.05);
    expect(snapped(SIZE, 30)).toBe(20);
  });
});

describe('a slider', () => {
  it('is even for percentages', () => {
    expect(toPlace(PERCENT, 35)).toBeCloseTo(0.35);
    expect(fromPlace(PERCENT, 0.504)).toBe(50);
  });

  it('puts a usual value near the low end a third along, so that small values can be told apart', () => {
    expect(toPlace(SIZE, 0.35)).toBeCloseTo(1 / 3);
    expect(fromPlace(SIZE, 1 / 3)).toBe(0.35);
  });

  it('reaches both ends and gives back what it shows', () => {
    expect([fromPlace(SIZE, 0), fromPlace(SIZE, 1)]).toEqual([0.05, 20]);
    for (const value of [0.05, 0.1, 0.5, 2, 10]) expect(fromPlace(SIZE, toPlace(SIZE, value))).toBe(value);
  });
});
