import { describe, expect, it } from 'vitest';
import { differenceOf } from '../../../src/ink/difference.ts';
import { conditionOf, FITTED, HELD_OUT, OVERPRINTS, pressModel, setOf } from './conditions.ts';
import { figuresOf } from './figures.ts';
import { leaveOneOut, overprintOf } from './leave-out.ts';

describe('overprints of a condition with constants fitted on the other conditions only', () => {
  it('come from the layers of the model itself', () => {
    const shipped = { takeUp: 0.74, opacity: 0.005 };
    for (const [id, glare] of [
      ['FOGRA39L', 0.005],
      ['FOGRA47L', 0.04],
      ['IFRA26S', 0.025],
    ] as const) {
      const { primaries } = pressModel(conditionOf(id));
      for (const patch of OVERPRINTS) {
        const free = overprintOf(conditionOf(id), patch, { ...shipped, glare });
        expect(differenceOf(free, primaries[setOf(patch)]!)).toBeLessThan(1e-9);
      }
    }
  });

  it('are off by 3.1 on average, 6.0 at 95% and 6.1 at most: the eight conditions', () => {
    const figures = figuresOf(leaveOneOut(FITTED));
    expect(figures.mean).toBeLessThan(3.15);
    expect(figures.p95).toBeLessThan(6.0);
    expect(figures.max).toBeLessThan(6.15);
  });

  it('are off by 3.0 on average, 6.1 at 95% and 7.6 at most: all ten', () => {
    const figures = figuresOf(leaveOneOut([...FITTED, ...HELD_OUT]));
    expect(figures.mean).toBeLessThan(3.0);
    expect(figures.p95).toBeLessThan(6.15);
    expect(figures.max).toBeLessThan(7.6);
  });
});
