import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labOfXyz, xyzOfLab } from '../../../src/ink/lab.ts';
import { xyzOfSpectrum } from '../../../src/ink/spectrum.ts';
import { D50, WEIGHTS } from '../../../src/ink/weights.ts';

describe('Lab and XYZ under D50', () => {
  it('put the perfect diffuser at 100, 0, 0', () => {
    expect(labOfXyz([...D50])).toEqual([100, 0, 0]);
  });

  it('put mid grey L = 50 at Y = 0.18419', () => {
    expect(xyzOfLab([50, 0, 0])[1]).toBeCloseTo(0.184187, 6);
  });

  it('are each other turned round, darks on the straight part included', () => {
    const side = fc.double({ min: -60, max: 60, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), side, side, (l, a, b) => {
        labOfXyz(xyzOfLab([l, a, b])).forEach((value, axis) => {
          expect(value).toBeCloseTo([l, a, b][axis]!, 9);
        });
      }),
    );
  });
});

describe('spectral weights', () => {
  it('sum to the D50 white', () => {
    expect(WEIGHTS).toHaveLength(36);
    xyzOfSpectrum(new Float64Array(36).fill(1)).forEach((value, axis) => {
      expect(value).toBeCloseTo(D50[axis]!, 8);
    });
  });
});
