import { describe, expect, it } from 'vitest';
import { contrastOf } from '../../../src/ink/contrast.ts';
import { displayOf } from '../../../src/ink/display.ts';
import { labFromPhoto } from '../../../src/ink/from-photo.ts';
import { labOfXyz } from '../../../src/ink/lab.ts';
import { EYES, eyesMatrix } from '../../../src/ink/seen-as.ts';
import { xyzOfHex } from '../../../src/ink/srgb.ts';

const labOf = (hex: string) => labOfXyz(xyzOfHex(hex));

describe('contrast of two prints', () => {
  it('is 21 between black and white and 1 between equals (WCAG 2.2, contrast ratio)', () => {
    expect(contrastOf([100, 0, 0], [0, 0, 0]).ratio).toBeCloseTo(21, 6);
    expect(contrastOf([40, 10, 10], [40, 10, 10])).toEqual({ ratio: 1, distance: 0 });
  });

  it('does not ask which comes first', () => {
    expect(contrastOf([80, 0, 40], [30, 20, 0])).toEqual(contrastOf([30, 20, 0], [80, 0, 40]));
  });
});

describe('a display', () => {
  it('gets the sRGB colour where that is enough', () => {
    const lab = labOf('#cb7f6c');
    expect(displayOf(lab, 'p3')).toEqual({ hex: '#cb7f6c', css: '#cb7f6c', onScreen: true });
  });

  it('gets a wider colour only where it is wide', () => {
    const lab = [62, 75, 80] as [number, number, number];
    expect(displayOf(lab, 'srgb').onScreen).toBe(false);
    expect(displayOf(lab, 'srgb').css).toBe(displayOf(lab, 'srgb').hex);
    expect(displayOf(lab, 'p3').css).toMatch(/^color\(display-p3 /);
  });

  it('is told what no display shows', () => {
    expect(displayOf([80, -120, 90], 'p3').onScreen).toBe(false);
  });
});

describe('other eyes', () => {
  it('leave white and grey as they are', () => {
    for (const eyes of EYES.filter((each) => each !== 'usual')) {
      const rows = eyesMatrix(eyes).split(' ').map(Number);
      expect(rows).toHaveLength(20);
      for (const row of [0, 1, 2])
        expect(rows[row * 5]! + rows[row * 5 + 1]! + rows[row * 5 + 2]!).toBeCloseTo(1, 5);
    }
  });
});

describe('a colour read from a photo', () => {
  const paper = [95, 0.5, -2] as [number, number, number];

  it('is the paper where the spot is the paper, in any light', () => {
    for (const white of [
      [230, 225, 210],
      [180, 190, 240],
    ] as const)
      labFromPhoto(white, white, paper).forEach((value, i) => {
        expect(value).toBeCloseTo(paper[i]!, 6);
      });
  });

  it('does not change with the exposure', () => {
    const half = (value: number) =>
      255 * (((value / 255 + 0.055) / 1.055) ** 2.4 / 2) ** (1 / 2.4) * 1.055 - 0.055 * 255;
    const spot = [160, 80, 70] as const;
    const white = [240, 236, 228] as const;
    const bright = labFromPhoto(spot, white, paper);
    const dim = labFromPhoto([half(160), half(80), half(70)], [half(240), half(236), half(228)], paper);
    dim.forEach((value, i) => {
      expect(value).toBeCloseTo(bright[i]!, 6);
    });
  });

  it('needs a white that can be paper', () => {
    expect(() => labFromPhoto([20, 20, 20], [30, 30, 30], paper)).toThrow(/too dark/);
    expect(() => labFromPhoto([20, 20, 20], [255, 255, 255], paper)).toThrow(/burnt out/);
  });
});
