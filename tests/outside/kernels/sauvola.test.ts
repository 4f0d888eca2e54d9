import { describe, expect, it } from 'vitest';
import { type SauvolaArgs, sauvola } from '../../../workers/kernels/sauvola.ts';
import { drawnPlane, flatPlane, planeOf, randomPlane, rowsOf } from '../../unit/support/pictures.ts';

/**
 * Sauvola & Pietikainen, "Adaptive document image binarization", Pattern Recognition 33 (2000), equation 5:
 * T(x, y) = m(x, y) (1 + k (s(x, y) / R - 1)), R = 128 for 8-bit brightness; m and s are mean and standard deviation
 * over the window. Written out pixel by pixel; a window that leaves the picture counts what lies within.
 */
function thresholdAt(bright: number[][], x: number, y: number, reach: number, k: number): number {
  const window: number[] = [];
  for (let py = y - reach; py <= y + reach; py++)
    for (let px = x - reach; px <= x + reach; px++) {
      const value = bright[py]?.[px];
      if (value !== undefined) window.push(value);
    }
  const m = window.reduce((sum, value) => sum + value, 0) / window.length;
  const s = Math.sqrt(window.reduce((sum, value) => sum + (value - m) ** 2, 0) / window.length);
  return m * (1 + k * (s / 128 - 1));
}

function parted(line: SauvolaArgs['line'], args: Partial<SauvolaArgs>) {
  const out = flatPlane(line.width, line.height, 9);
  sauvola({ line, out, reach: 1, k: 0.5, half: 0, sure: 256, ...args }, 0, line.height);
  return out;
}

const brightOf = (line: SauvolaArgs['line']) =>
  rowsOf(line.data, line.width).map((row) => row.map((value) => 255 - value));

describe("Sauvola's threshold", () => {
  /**
   * Eight pixels of brightness 200 and one of b: for b = 50, m = 1650 / 9 = 183.33, s = 47.14, T = 125.43, for k = 0.5;
   * for b = 120, m = 191.11, s = 25.14, T = 114.32; for b = 110, m = 190, s = 28.28, T = 115.99.
   */
  it.each([
    [50, 125.43, 255],
    [120, 114.32, 0],
    [110, 115.99, 255],
  ])('of a window by hand: brightness %d against %d', (bright, level, wanted) => {
    const line = drawnPlane(3, 3, (x, y) => 255 - (x === 1 && y === 1 ? bright : 200));
    expect(thresholdAt(brightOf(line), 1, 1, 1, 0.5)).toBeCloseTo(level, 2);
    expect(parted(line, {}).data[4]).toBe(wanted);
  });

  it('of the corner of a picture by hand: the window is cut off', () => {
    const line = planeOf([
      [155, 55, 0],
      [55, 55, 0],
      [0, 0, 0],
    ]);
    expect(thresholdAt(brightOf(line), 0, 0, 1, 0.5)).toBeCloseTo(175 * (1 + 0.5 * (43.301 / 128 - 1)), 2);
    expect(parted(line, {}).data[0]).toBe(255);
  });

  it.each([
    [1, 0.5],
    [3, 0.2],
    [7, 0.34],
    [40, 0.1],
  ])('is the published formula on noise, for a reach of %d px and k = %d', (reach, k) => {
    for (const [width, height, seed] of [
      [37, 29, 1],
      [16, 50, 2],
      [5, 4, 3],
    ] as const) {
      const line = randomPlane(width, height, seed);
      const bright = brightOf(line);
      const out = parted(line, { reach, k });
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++)
          expect(out.data[y * width + x]).toBe(
            bright[y]![x]! < thresholdAt(bright, x, y, reach, k) ? 255 : 0,
          );
    }
  });

  it('with a soft edge makes line of the same pixels, on a ramp about the threshold', () => {
    const line = randomPlane(40, 30, 4);
    const bright = brightOf(line);
    const hard = parted(line, { reach: 4, k: 0.3 });
    const soft = parted(line, { reach: 4, k: 0.3, half: 60 });
    soft.data.forEach((value, i) => {
      expect(value >= 128).toBe(hard.data[i] === 255);
      const below =
        thresholdAt(bright, i % 40, Math.floor(i / 40), 4, 0.3) - bright[Math.floor(i / 40)]![i % 40]!;
      const ramp = Math.min(255, Math.max(0, 127.5 + (below * 127) / 60));
      expect(Math.abs(value - ramp)).toBeLessThanOrEqual(1);
    });
  });

  it('leaves what is surely line as line, though all around is as dark', () => {
    const solid = flatPlane(30, 30, 220);
    expect(parted(solid, { reach: 5 }).data[465]).toBe(0);
    expect(parted(solid, { reach: 5, sure: 200 }).data[465]).toBe(255);
  });
});
