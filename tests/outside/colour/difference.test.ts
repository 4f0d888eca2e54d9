import { describe, expect, it } from 'vitest';
import { differenceOf } from '../../../src/ink/difference.ts';
import data from './ciede2000-sharma.json';

describe('CIEDE2000 against the 34 pairs of Sharma, Wu and Dalal (2005), table 1', () => {
  it('is right to four decimals in both orders', () => {
    expect(data.pairs).toHaveLength(34);
    for (const [l1, a1, b1, l2, a2, b2, expected] of data.pairs) {
      expect(Math.abs(differenceOf([l1!, a1!, b1!], [l2!, a2!, b2!]) - expected!)).toBeLessThan(1e-4);
      expect(Math.abs(differenceOf([l2!, a2!, b2!], [l1!, a1!, b1!]) - expected!)).toBeLessThan(1e-4);
    }
  });
});
