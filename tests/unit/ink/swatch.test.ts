import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../src/graph/inks.ts';
import { differenceOf } from '../../../src/ink/difference.ts';
import { labOfXyz, xyzOfLab } from '../../../src/ink/lab.ts';
import { xyzOfSpectrum } from '../../../src/ink/spectrum.ts';
import { xyzOfHex } from '../../../src/ink/srgb.ts';
import { swatchOf } from '../../../src/ink/swatch.ts';

const slopes = (values: readonly number[]): number =>
  values.slice(1).reduce((sum, value, i) => sum + (value - values[i]!) ** 2, 0);

describe('the smoothest reflectance of a colour', () => {
  it('has that colour to 1e-9 in XYZ for any block of reflectance, however steep', () => {
    const band = fc.integer({ min: 0, max: 35 });
    fc.assert(
      fc.property(
        band,
        band,
        fc.boolean(),
        fc.double({ min: 0.001, max: 0.3, noNaN: true }),
        (a, b, within, low) => {
          const block = Float64Array.from({ length: 36 }, (_, i) =>
            (i >= Math.min(a, b) && i <= Math.max(a, b)) === within ? 1 - low : low,
          );
          const xyz = xyzOfSpectrum(block);
          const { reflectance, outsideModel } = swatchOf(xyz);
          expect(outsideModel).toBe(false);
          xyzOfSpectrum(reflectance).forEach((value, axis) => {
            expect(Math.abs(value - xyz[axis]!)).toBeLessThan(1e-9);
          });
        },
      ),
    );
  });

  it('is no steeper, as log odds, than the block of reflectance with the same colour', () => {
    const logOdds = (r: number): number => Math.log(r / (1 - r));
    const block = Float64Array.from({ length: 36 }, (_, i) => (i > 8 && i < 20 ? 0.7 : 0.1));
    const { reflectance } = swatchOf(xyzOfSpectrum(block));
    expect(slopes([...reflectance].map(logOdds))).toBeLessThan(slopes([...block].map(logOdds)) / 4);
  });

  it('is flat for greys, the ends included', () => {
    for (const l of [0, 1, 50, 99.9, 100]) {
      const { reflectance, outsideModel } = swatchOf(xyzOfLab([l, 0, 0]));
      expect(outsideModel).toBe(false);
      expect(Math.max(...reflectance) - Math.min(...reflectance)).toBeLessThan(1e-9);
      expect(labOfXyz(xyzOfSpectrum(reflectance))[0]).toBeCloseTo(l, 5);
    }
  });

  it('is found for every corner and edge of the sRGB cube', () => {
    const steps = ['00', '01', '80', 'fe', 'ff'];
    for (const r of steps) {
      for (const g of steps) {
        for (const b of steps) {
          expect(swatchOf(xyzOfHex(`#${r}${g}${b}`)).outsideModel, `#${r}${g}${b}`).toBe(false);
        }
      }
    }
  });
});

describe('a colour that no plain surface has', () => {
  const anyLab: fc.Arbitrary<Lab> = fc.tuple(
    fc.double({ min: 0, max: 150, noNaN: true }),
    fc.double({ min: -200, max: 200, noNaN: true }),
    fc.double({ min: -200, max: 200, noNaN: true }),
  );

  it('gets a reflectance within 0..1 all the same, and has its own colour unless flagged', () => {
    fc.assert(
      fc.property(anyLab, (lab) => {
        const { reflectance, outsideModel } = swatchOf(xyzOfLab(lab));
        expect(reflectance.every((value) => value >= 0 && value <= 1)).toBe(true);
        if (outsideModel) return;
        expect(differenceOf(labOfXyz(xyzOfSpectrum(reflectance)), lab)).toBeLessThan(0.001);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps its lightness and leans to its hue: a fluorescent orange', () => {
    const { reflectance, outsideModel } = swatchOf(xyzOfLab([75, 80, 80]));
    const [l, a, b] = labOfXyz(xyzOfSpectrum(reflectance));
    expect(outsideModel).toBe(true);
    expect(l).toBeCloseTo(75, 6);
    expect(a).toBeGreaterThan(30);
    expect(b).toBeGreaterThan(30);
  });

  it('lighter than the perfect diffuser becomes plain white', () => {
    const { reflectance, outsideModel } = swatchOf(xyzOfLab([104, 3, 2]));
    expect(outsideModel).toBe(true);
    expect([...new Set(reflectance)]).toEqual([1]);
  });
});
