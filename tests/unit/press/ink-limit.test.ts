import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limited, totalOf } from '../../../src/press/ink-limit.ts';

const NONE = { mostOf: {}, total: null, yieldsFirst: '' };

describe('a recipe', () => {
  it('without limits stays as it is', () => {
    expect(limited({ straw: 100, brick: 80 }, NONE)).toEqual({ straw: 100, brick: 80 });
  });

  it('prints no plate above the limit of that plate', () => {
    expect(limited({ straw: 100, brick: 80 }, { ...NONE, mostOf: { straw: 85 } })).toEqual({
      straw: 85,
      brick: 80,
    });
  });

  it('above the total takes from all plates alike', () => {
    expect(limited({ straw: 100, brick: 100, soot: 50 }, { ...NONE, total: 200 })).toEqual({
      straw: 80,
      brick: 80,
      soot: 40,
    });
  });

  it('takes from the plate that yields first as long as it has any', () => {
    expect(
      limited({ straw: 100, brick: 100, soot: 50 }, { ...NONE, total: 200, yieldsFirst: 'straw' }),
    ).toEqual({
      straw: 50,
      brick: 100,
      soot: 50,
    });
    expect(
      limited({ straw: 20, brick: 100, soot: 100 }, { ...NONE, total: 150, yieldsFirst: 'straw' }),
    ).toEqual({
      straw: 0,
      brick: 75,
      soot: 75,
    });
  });

  it('is never above any limit, and no plate grows', () => {
    const tint = fc.integer({ min: 0, max: 1000 }).map((value) => value / 10);
    fc.assert(
      fc.property(
        fc.dictionary(fc.constantFrom('a', 'b', 'c', 'd'), tint),
        fc.integer({ min: 50, max: 400 }),
        fc.constantFrom('', 'a', 'b', 'z'),
        fc.dictionary(fc.constantFrom('a', 'b'), tint),
        (recipe, total, yieldsFirst, mostOf) => {
          const result = limited(recipe, { total, yieldsFirst, mostOf });
          expect(totalOf(result)).toBeLessThanOrEqual(total + 1e-6);
          for (const [plate, value] of Object.entries(result)) {
            expect(value).toBeLessThanOrEqual(Math.min(recipe[plate]!, mostOf[plate] ?? 100));
            expect(value).toBeGreaterThanOrEqual(0);
          }
        },
      ),
    );
  });
});
