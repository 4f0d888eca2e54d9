import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../src/graph/inks.ts';
import { xyzOfLab } from '../../../src/ink/lab.ts';
import { swatchOf } from '../../../src/ink/swatch.ts';
import data from './model-regression.json';

/** Regression against an earlier reckoning of the same model: these guard against slips, they prove nothing. */
describe('regression: an earlier reckoning of this model, done independently', () => {
  it('has the same smoothest reflectances to its five decimals', () => {
    for (const { lab, R } of Object.values(data.reflectanceLHTSS)) {
      const { reflectance } = swatchOf(xyzOfLab(lab as Lab));
      R.forEach((value, band) => {
        expect(Math.abs(reflectance[band]! - value)).toBeLessThan(1.1e-5);
      });
    }
  });
});
