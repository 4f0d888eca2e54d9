import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { labOfXyz, xyzOfLab } from '../../../src/ink/lab.ts';
import { screenOf } from '../../../src/ink/screen.ts';
import { xyzOfHex } from '../../../src/ink/srgb.ts';
import data from './srgb-lab-lcms.json';

const hexOf = (rgb: readonly number[]): string =>
  `#${rgb.map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;

describe('sRGB and Lab D50', () => {
  it('agree with Little CMS readings to 0.06 on every coordinate', () => {
    for (const { rgb, lab } of data.rows) {
      labOfXyz(xyzOfHex(hexOf(rgb))).forEach((value, axis) => {
        expect(Math.abs(value - lab[axis]!), `${rgb} axis ${axis}`).toBeLessThan(0.06);
      });
    }
  });

  it('bring every colour of those readings back to its own hex', () => {
    for (const { rgb } of data.rows) {
      expect(screenOf(labOfXyz(xyzOfHex(hexOf(rgb))))).toEqual({ hex: hexOf(rgb), onScreen: true });
    }
  });

  it('agree with culori to 0.03, whose D50 white differs in the fourth decimal', () => {
    const toLab = converter('lab');
    for (const { rgb } of data.rows) {
      const { l, a, b } = toLab(hexOf(rgb))!;
      const ours = labOfXyz(xyzOfHex(hexOf(rgb)));
      [l, a, b].forEach((value, axis) => {
        expect(Math.abs(ours[axis]! - value)).toBeLessThan(0.03);
      });
    }
  });

  it('agree with culori on Lab to XYZ', () => {
    const toXyz = converter('xyz50');
    const { x, y } = toXyz({ mode: 'lab', l: 50, a: 30, b: -40 });
    const ours = xyzOfLab([50, 30, -40]);
    expect(Math.abs(ours[0] - x)).toBeLessThan(1e-4);
    expect(ours[1]).toBeCloseTo(y, 12);
  });
});
