import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../src/graph/inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { labOfXyz, xyzOfLab } from '../../../src/ink/lab.ts';
import { encodeSrgb, linearOfXyz, xyzOfHex } from '../../../src/ink/srgb.ts';
import {
  BLACK_OVERPRINTS,
  blackModel,
  blackSetOf,
  type Condition,
  FITTED,
  HELD_OUT,
  measuredOf,
  OVERPRINTS,
  type Patch,
  pressModel,
  setOf,
} from './conditions.ts';
import { figuresOf } from './figures.ts';

/** The measured data carry two decimals at best and the published figures two: room for both. */
const ROUNDING = 0.05;

const errorsOf = (condition: Condition): number[] => {
  const { primaries } = pressModel(condition);
  return OVERPRINTS.map((patch) => differenceOf(primaries[setOf(patch)]!, condition.lab[patch]));
};

/** What painting programs do: the swatches' encoded sRGB multiplied. */
function multiplied(condition: Condition, patch: Patch): Lab {
  const encoded = [...patch].map((ink) =>
    linearOfXyz(xyzOfLab(condition.lab[ink as Patch])).map((v) => encodeSrgb(Math.min(1, Math.max(0, v)))),
  );
  const bytes = [0, 1, 2].map((channel) =>
    Math.round(255 * encoded.reduce((so, ink) => so * ink[channel]!, 1)),
  );
  return labOfXyz(xyzOfHex(`#${bytes.map((byte) => byte.toString(16).padStart(2, '0')).join('')}`));
}

describe('overprints predicted from paper and solids alone, 8 measured offset conditions, 32 overprints', () => {
  it('are off by 2.8 on average, 4.2 at 95% and 5.0 at most', () => {
    const figures = figuresOf(FITTED.flatMap(errorsOf));
    expect(figures.mean).toBeLessThan(2.8 + ROUNDING);
    expect(figures.p95).toBeLessThan(4.2 + ROUNDING);
    expect(figures.max).toBeLessThan(5.0 + ROUNDING);
  });

  it('are four times as near as multiplied swatches, which are off by 13.0, 22.2 and 23.1', () => {
    const naive = figuresOf(
      FITTED.flatMap((condition) =>
        OVERPRINTS.map((patch) => differenceOf(multiplied(condition, patch), condition.lab[patch])),
      ),
    );
    expect(naive.mean).toBeCloseTo(13.0, 0);
    expect(naive.p95).toBeCloseTo(22.2, 0);
    expect(naive.max).toBeCloseTo(23.1, 0);
    expect(figuresOf(FITTED.flatMap(errorsOf)).mean).toBeLessThan(naive.mean / 4);
  });

  it('stay under 7.2 on two conditions that nothing was fitted on', () => {
    const figures = figuresOf(HELD_OUT.flatMap(errorsOf));
    expect(figures.mean).toBeLessThan(3.0 + ROUNDING);
    expect(figures.max).toBeLessThan(7.15 + ROUNDING);
  });

  it('are off by 4.0, 6.8 and 7.5 with black beneath, on all ten conditions; nothing was fitted on black', () => {
    const figures = figuresOf(
      [...FITTED, ...HELD_OUT].flatMap((condition) => {
        const { primaries } = blackModel(condition);
        return BLACK_OVERPRINTS.map((patch) =>
          differenceOf(primaries[blackSetOf(patch)]!, condition.lab[patch]),
        );
      }),
    );
    expect(figures.mean).toBeLessThan(4.0);
    expect(figures.p95).toBeLessThan(6.85);
    expect(figures.max).toBeLessThan(7.5 + ROUNDING);
  });
});

describe('measured overprints', () => {
  it('come out as they were read', () => {
    for (const condition of FITTED) {
      const { primaries, isMeasured } = pressModel(condition, {
        measured: measuredOf(condition, OVERPRINTS),
      });
      for (const patch of OVERPRINTS) {
        expect(isMeasured(setOf(patch))).toBe(true);
        expect(differenceOf(primaries[setOf(patch)]!, condition.lab[patch])).toBeLessThan(1e-6);
      }
    }
  });

  it('of pairs take the mean error of the triple from 3.7 to 3.2', () => {
    const triple = (condition: Condition, patches: readonly Patch[]): number => {
      const { primaries } = pressModel(condition, { measured: measuredOf(condition, patches) });
      return differenceOf(primaries[7]!, condition.lab.CMY);
    };
    const alone = figuresOf(FITTED.map((condition) => triple(condition, [])));
    const corrected = figuresOf(FITTED.map((condition) => triple(condition, ['CM', 'CY', 'MY'])));
    expect(alone.mean).toBeGreaterThan(3.7);
    expect(corrected.mean).toBeLessThan(3.2);
  });
});
