import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../src/graph/inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { conditionOf, measuredOf, OVERPRINTS, pressModel } from './conditions.ts';
import { type Figures, figuresOf } from './figures.ts';
import coated from './fogra39-cmy.json';
import uncoated from './fogra47-cmy.json';
import newsprint from './ifra26-cmy.json';

/** The targets carry one decimal. */
const ROUNDING = 0.05;

function errorsOf(id: string, rows: readonly number[][], measured: boolean): Figures {
  const condition = conditionOf(id);
  const model = pressModel(condition, measured ? { measured: measuredOf(condition, OVERPRINTS) } : {});
  const printed = rows.filter((row) => row.slice(0, 3).some((tint) => tint > 0));
  return figuresOf(
    printed.map((row) => {
      const tints = row.slice(0, 3).map((percent) => percent / 100);
      return differenceOf(model.labOf(tints), row.slice(3) as Lab);
    }),
  );
}

function expectAtMost(figures: Figures, mean: number, p95: number, max: number): void {
  expect(figures.mean).toBeLessThan(mean + ROUNDING);
  expect(figures.p95).toBeLessThan(p95 + ROUNDING);
  expect(figures.max).toBeLessThan(max + ROUNDING);
}

describe('tints and their mixes against characterisation data, no constant set per press', () => {
  it('coated (FOGRA39, 794 patches): 1.4, 3.2 and 4.3 from the solids alone', () => {
    expect(coated.rows).toHaveLength(795);
    expectAtMost(errorsOf('FOGRA39L', coated.rows, false), 1.4, 3.2, 4.3);
  });

  it('coated with measured overprints: 0.8, 1.7 and 2.7', () => {
    expectAtMost(errorsOf('FOGRA39L', coated.rows, true), 0.85, 1.65, 2.7);
  });

  it('uncoated (FOGRA47, 794 patches): 1.7, 3.4 and 4.6 from the solids alone', () => {
    expectAtMost(errorsOf('FOGRA47L', uncoated.rows, false), 1.7, 3.4, 4.6);
  });

  it('newsprint (IFRA26, 249 patches): 0.8, 2.2 and 3.3 from the solids alone', () => {
    expectAtMost(errorsOf('IFRA26S', newsprint.rows, false), 0.8, 2.2, 3.3);
  });
});
