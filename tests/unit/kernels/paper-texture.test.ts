import { describe, expect, it } from 'vitest';
import { latticeOf } from '../../../workers/kernels/lattice.ts';
import { paperTexture } from '../../../workers/kernels/paper-texture.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { flatPlane, isFlat } from '../support/pictures.ts';

const WIDTH = 500;
const HEIGHT = 400;

function sheet(options: { tooth?: number; fibres?: number; seed?: number; toothMm?: number }): Plane {
  const { tooth = 0, fibres = 0, seed = 1, toothMm = 0.25 } = options;
  const out = flatPlane(WIDTH, HEIGHT, 9);
  const args = { out, lattice: latticeOf(seed), pixelMm: 25.4 / 300, toothMm, tooth, fibres, seed };
  paperTexture(args, 0, HEIGHT);
  return out;
}

const meanOf = ({ data }: Plane) => data.reduce((sum, value) => sum + value, 0) / data.length;

const differing = (a: Plane, b: Plane) => a.data.filter((value, i) => value !== b.data[i]).length;

describe('the texture of a paper', () => {
  it('without tooth and fibres is 128 everywhere', () => {
    expect(isFlat(sheet({}), 128)).toBe(true);
  });

  it('leaves the sheet as light as it was: its mean stays near 128', () => {
    for (const seed of [1, 2, 3, 0xffffffff])
      for (const options of [{ tooth: 1 }, { fibres: 1 }, { tooth: 0.3, fibres: 0.25 }])
        expect(Math.abs(meanOf(sheet({ ...options, seed })) - 128)).toBeLessThan(1.5);
  });

  it('goes to both sides of 128', () => {
    for (const options of [{ tooth: 0.5 }, { fibres: 1 }]) {
      const values = new Set(sheet(options).data);
      expect(Math.min(...values)).toBeLessThan(120);
      expect(Math.max(...values)).toBeGreaterThan(136);
    }
  });

  it('is the same for the same seed and another for another', () => {
    const options = { tooth: 0.3, fibres: 0.25 };
    expect(differing(sheet(options), sheet(options))).toBe(0);
    expect(differing(sheet({ ...options, seed: 2 }), sheet(options))).toBeGreaterThan(0);
    expect(differing(sheet({ fibres: 1, seed: 2 }), sheet({ fibres: 1 }))).toBeGreaterThan(0);
  });

  it('leaves most of the sheet bare between fibres', () => {
    const bare = sheet({ fibres: 1 }).data.filter((value) => value === 128).length;
    expect(bare).toBeGreaterThan(0.5 * WIDTH * HEIGHT);
    expect(bare).toBeLessThan(WIDTH * HEIGHT);
  });

  it('swings twice as far with twice the tooth', () => {
    const swing = (tooth: number) =>
      Math.max(...new Set(sheet({ tooth }).data.map((value) => Math.abs(value - 128))));
    expect(Math.abs(swing(0.8) - 2 * swing(0.4))).toBeLessThanOrEqual(1);
  });
});
