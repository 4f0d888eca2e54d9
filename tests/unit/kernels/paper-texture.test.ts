import { describe, expect, it } from 'vitest';
import { latticeOf } from '../../../workers/kernels/lattice.ts';
import { type PaperLook, paperTexture } from '../../../workers/kernels/paper-texture.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { flatPlane, isFlat } from '../support/pictures.ts';

const WIDTH = 500;
const HEIGHT = 400;

const PLAIN: PaperLook = {
  tooth: 0,
  toothMm: 0.25,
  fibres: 0,
  fibresAlong: [1, 0],
  fibresSpread: 1,
  flecks: 0,
  flecksPerDm2: 0,
  flecksMm: 0.6,
  laid: 0,
  laidMm: 1,
  seed: 1,
};

function sheet(options: Partial<PaperLook>): Plane {
  const look = { ...PLAIN, ...options };
  const out = flatPlane(WIDTH, HEIGHT, 9);
  paperTexture({ out, lattice: latticeOf(look.seed), pixelMm: 25.4 / 300, look }, 0, HEIGHT);
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

  it('lays fibres along their direction: the sheet changes less that way', () => {
    const restless = ({ data }: Plane, step: number) =>
      data.reduce((sum, value, i) => sum + Math.abs(value - (data[i + step] ?? value)), 0);
    const along = sheet({ fibres: 1, fibresSpread: 0.1 });
    expect(restless(along, 1)).toBeLessThan(0.6 * restless(along, WIDTH));
    const down = sheet({ fibres: 1, fibresSpread: 0.1, fibresAlong: [0, 1] });
    expect(restless(down, WIDTH)).toBeLessThan(0.6 * restless(down, 1));
  });

  it('has as many flecks as it was told, all darker than the sheet', () => {
    const flecked = sheet({ flecks: 1, flecksPerDm2: 400 }).data;
    expect(Math.max(...new Set(flecked))).toBe(128);
    const dark = (perDm2: number) =>
      sheet({ flecks: 1, flecksPerDm2: perDm2 }).data.filter((v) => v < 118).length;
    expect(dark(800) / dark(400)).toBeGreaterThan(1.6);
    expect(dark(800) / dark(400)).toBeLessThan(2.4);
    expect(dark(0)).toBe(0);
  });

  it('shows laid lines at their pitch, across the sheet', () => {
    const { data } = sheet({ laid: 1, laidMm: 2 });
    const column = Array.from({ length: HEIGHT }, (_, y) => data[y * WIDTH]! - 128);
    const period = (2 * 300) / 25.4;
    const crossings = column.filter((value, y) => y > 0 && value >= 0 && column[y - 1]! < 0).length;
    expect(Math.abs(crossings - HEIGHT / period)).toBeLessThanOrEqual(1);
    expect(data.every((value, i) => value === data[Math.floor(i / WIDTH) * WIDTH])).toBe(true);
  });
});
