import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../src/graph/inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { randomOf } from '../../unit/support/random.ts';
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

describe('CIEDE2000 against culori, labelled so that it converts nothing', () => {
  const theirs = differenceCiede2000();
  const labelled = ([l, a, b]: Lab) => ({ mode: 'lab65' as const, l, a, b });

  it('agrees to 1e-8 on 20,000 pairs, near and far, greys and nearly opposite hues among them', () => {
    const random = randomOf(2005);
    const signed = (most: number) => (2 * random() - 1) * most;
    for (let i = 0; i < 20_000; i++) {
      const one: Lab = [100 * random(), signed(100), signed(100)];
      const reach = [0.5, 5, 200][i % 3]!;
      const near: Lab = [one[0] + signed(reach / 2), one[1] + signed(reach), one[2] + signed(reach)];
      const other: Lab[] = [near, [one[0], 0, 0], [40, -one[1] * 1.5, 0.1 - one[2] * 1.5]];
      for (const two of other) {
        const difference = differenceOf(one, two);
        expect(Math.abs(difference - theirs(labelled(one), labelled(two)))).toBeLessThan(1e-8);
        expect(Math.abs(difference - differenceOf(two, one))).toBeLessThan(1e-12);
      }
    }
  });
});
