import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quadraticForms, xyzOfForms } from '../../../src/ink/quadratic.ts';
import { xyzOfSpectrum } from '../../../src/ink/spectrum.ts';
import { demichelWeights, grownTint, halftone } from '../../../src/ink/tints.ts';
import { alongCurve, coverageOfTone, gainOfToneIncrease, toneOfCoverage } from '../../../src/ink/tone.ts';
import { anyTint } from './inks.ts';

const anyCoverages = fc.array(anyTint, { minLength: 1, maxLength: 6 });

describe('random dots', () => {
  it('cover the paper exactly once', () => {
    fc.assert(
      fc.property(anyCoverages, (coverages) => {
        const weights = demichelWeights(coverages);
        expect(weights.every((weight) => weight >= 0)).toBe(true);
        expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('lay each ink on as much paper as its coverage says', () => {
    fc.assert(
      fc.property(anyCoverages, (coverages) => {
        const weights = demichelWeights(coverages);
        coverages.forEach((coverage, ink) => {
          const sum = weights.reduce((so, weight, set) => so + (set & (1 << ink) ? weight : 0), 0);
          expect(sum).toBeCloseTo(coverage, 12);
        });
      }),
    );
  });
});

describe('dot gain', () => {
  it('adds g at 50% and nothing at the ends', () => {
    expect(grownTint(0.5, 0.17)).toBeCloseTo(0.67, 12);
    expect([grownTint(0, 0.17), grownTint(1, 0.17)]).toEqual([0, 1]);
  });

  it('never covers more than everything', () => {
    expect(grownTint(0.8, 0.5)).toBe(1);
  });
});

describe('quadratic forms', () => {
  it('give the XYZ of the spectral halftone without its spectra', () => {
    const reflectance = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: 36,
      maxLength: 36,
    });
    fc.assert(
      fc.property(
        fc.array(reflectance, { minLength: 4, maxLength: 4 }),
        anyTint,
        anyTint,
        (spectra, a, b) => {
          const roots = spectra.map((spectrum) => Float64Array.from(spectrum, Math.sqrt));
          const weights = demichelWeights([a, b]);
          const slow = xyzOfSpectrum(halftone(weights, (set) => roots[set]!));
          xyzOfForms(quadraticForms(roots), weights).forEach((value, axis) => {
            expect(value).toBeCloseTo(slow[axis]!, 12);
          });
        },
      ),
      { numRuns: 20 },
    );
  });
});

describe('tone values', () => {
  const scale = { paper: 0.8, solid: 0.05, between: Math.sqrt(0.8 * 0.05) };

  it('lie above the coverage, by the light caught under the dots', () => {
    expect(toneOfCoverage(scale, 0.5)).toBeCloseTo((0.8 - 0.3125) / 0.75, 12);
  });

  it('turn back into the coverage they were read on, for inks lighter than their paper too', () => {
    for (const one of [scale, { paper: 0.2, solid: 0.7, between: Math.sqrt(0.2 * 0.7) }]) {
      for (const coverage of [0, 0.02, 0.3, 0.5, 0.9, 1]) {
        expect(coverageOfTone(one, toneOfCoverage(one, coverage))).toBeCloseTo(coverage, 12);
      }
    }
  });

  it('of an ink that cannot be told from its paper are its coverage', () => {
    expect(coverageOfTone({ paper: 0.5, solid: 0.5, between: 0.5 }, 0.3)).toBe(0.3);
  });

  it('increased at 50% by what optics alone adds need no dot gain', () => {
    expect(gainOfToneIncrease(scale, 0.65 - 0.5)).toBeCloseTo(0, 12);
    expect(gainOfToneIncrease(scale, 0.25)).toBeGreaterThan(0.05);
    expect(gainOfToneIncrease(scale, 0)).toBeLessThan(-0.05);
  });
});

describe('a film-to-print curve', () => {
  const curve = [
    [0.06, 0],
    [0.5, 0.45],
    [0.9, 0.92],
  ] as const;

  it('passes through its points and straight between them', () => {
    expect(alongCurve(curve, 0.06)).toBe(0);
    expect(alongCurve(curve, 0.5)).toBe(0.45);
    expect(alongCurve(curve, 0.28)).toBeCloseTo(0.225, 12);
  });

  it('runs from 0, 0 and to 1, 1 beyond its ends', () => {
    expect([alongCurve(curve, 0), alongCurve(curve, 0.03), alongCurve(curve, 1)]).toEqual([0, 0, 1]);
    expect(alongCurve(curve, 0.95)).toBeCloseTo(0.96, 12);
    expect(alongCurve([], 0.4)).toBe(0.4);
  });

  it('that says more at 0 or less at 1 is believed', () => {
    expect(
      alongCurve(
        [
          [0, 0.02],
          [1, 0.97],
        ],
        0,
      ),
    ).toBe(0.02);
    expect(
      alongCurve(
        [
          [0, 0.02],
          [1, 0.97],
        ],
        1,
      ),
    ).toBe(0.97);
  });
});
