import { describe, expect, it } from 'vitest';
import { demichelWeights, halftone } from '../../../src/ink/tints.ts';

describe('Demichel (1924, from memory): weight = product of a over the inks there and 1 - a over the others', () => {
  it('0.5, 0.4 and 0.2 cover as worked by hand', () => {
    const byInks = {
      '000': 0.24,
      '100': 0.24,
      '010': 0.16,
      '110': 0.16,
      '001': 0.06,
      '101': 0.06,
      '011': 0.04,
      '111': 0.04,
    };
    const weights = demichelWeights([0.5, 0.4, 0.2]);
    for (const [inks, weight] of Object.entries(byInks)) {
      const set = [...inks].reduce((so, here, ink) => so + (here === '1' ? 1 << ink : 0), 0);
      expect(weights[set]).toBeCloseTo(weight, 12);
    }
  });
});

describe('Yule-Nielsen (1951, from memory): R = ((1-a) Rp^(1/n) + a Rs^(1/n))^n', () => {
  it('half coverage of 0.05 on 0.8 reads 0.3125 with n = 2, not the 0.425 of plain mixing', () => {
    const roots = [new Float64Array([Math.sqrt(0.8)]), new Float64Array([Math.sqrt(0.05)])];
    expect(halftone(new Float64Array([0.5, 0.5]), (set) => roots[set]!)[0]).toBeCloseTo(0.3125, 12);
  });
});
