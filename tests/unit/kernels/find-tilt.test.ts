import { describe, expect, it } from 'vitest';
import { findTilt } from '../../../workers/kernels/find-tilt.ts';
import { offset } from '../../../workers/kernels/offset.ts';
import { sineAndCosine, turnedPlace } from '../../../workers/kernels/turn.ts';
import { drawnPlane, flatPlane, randomPicture, transposed } from '../support/pictures.ts';

/** Lines that rise or fall by `deg`, clockwise. */
const lines = (deg: number) => {
  const slope = Math.tan((deg * Math.PI) / 180);
  return drawnPlane(900, 600, (x, y) => {
    const at = (y - x * slope + 900) % 90;
    return Math.round(255 * Math.min(1, Math.max(0, 3 - Math.abs(at - 45))));
  });
};

describe('the tilt of a drawing', () => {
  it.each([0, 0.5, -0.5, 3.14, -6.6])('of lines at %d degrees is that, to 0.03', (deg) => {
    const found = findTilt({ line: lines(deg), level: 127 });
    expect(Math.abs(found.deg - deg)).toBeLessThanOrEqual(0.03);
    expect(found.clarity).toBeGreaterThan(2);
  });

  it('of upright lines is the same', () => {
    const found = findTilt({ line: transposed(lines(-2)), level: 127 });
    expect(Math.abs(found.deg - 2)).toBeLessThanOrEqual(0.03);
  });

  it('of noise, of rings and of nothing is not clear', () => {
    const rings = drawnPlane(700, 600, (x, y) => (Math.hypot(x - 350, y - 300) % 60 < 3 ? 255 : 0));
    for (const line of [randomPicture(500, 400, 0.03, 2), rings, flatPlane(60, 50)])
      expect(findTilt({ line, level: 127 }).clarity).toBeLessThan(1.5);
  });
});

describe('turning', () => {
  it('has the sines and cosines of the angle', () => {
    for (const deg of [-10, -3.7, 0, 0.01, 7, 10, 45]) {
      const [sine, cosine] = sineAndCosine(deg);
      expect(sine).toBeCloseTo(Math.sin((deg * Math.PI) / 180), 14);
      expect(cosine).toBeCloseTo(Math.cos((deg * Math.PI) / 180), 14);
    }
  });

  it('is clockwise about the middle, and paper comes in from outside', () => {
    const plate = drawnPlane(41, 41, (x, y) => (x === 35 && y === 20 ? 255 : 0));
    const out = flatPlane(41, 41);
    offset({ plate, out, place: turnedPlace(30, 41, 41) }, 0, 41);
    const [x, y] = [20 + 15 * Math.cos(Math.PI / 6), 20 + 15 * Math.sin(Math.PI / 6)];
    const weight = [...out.data].reduce((sum, value) => sum + value, 0);
    const at = [0, 1].map(
      (axis) =>
        [...out.data].reduce((sum, value, i) => sum + value * (axis === 0 ? i % 41 : Math.floor(i / 41)), 0) /
        weight,
    );
    expect(at[0]).toBeCloseTo(x, 0);
    expect(at[1]).toBeCloseTo(y, 0);
    const solid = flatPlane(41, 41, 255);
    offset({ plate: solid, out, place: turnedPlace(10, 41, 41) }, 0, 41);
    expect([out.data[0], out.data[20 * 41 + 20]]).toEqual([0, 255]);
  });
});
