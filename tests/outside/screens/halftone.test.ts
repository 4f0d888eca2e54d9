import { beforeAll, describe, expect, it } from 'vitest';
import { blueNoise } from '../../../workers/kernels/screen/blue-noise.ts';
import { dotsOf } from '../../unit/support/halftoned.ts';
import { drawnPlane, flatPlane, percentOf } from '../../unit/support/pictures.ts';
import { randomOf } from '../../unit/support/random.ts';
import { openCvStarts } from '../kernels/opencv.ts';
import { peakOf, powerOf } from './opencv-spectrum.ts';

beforeAll(openCvStarts);

const SIDE = 1024;

describe('an AM screen', () => {
  it.each([
    [45, 15, 600, 'round'],
    [45, 45, 600, 'round'],
    [45, 75, 600, 'ellipse'],
    [85, 7.5, 600, 'round'],
    [85, 22.5, 1200, 'ellipse'],
    [133, 18.4, 2400, 'round'],
    [60, 33, 720, 'line'],
    [35, 120, 300, 'line'],
  ])('of %d lpi at %d degrees on %d ppi has its peak there, %s dots', async (lpi, angleDeg, ppi, dot) => {
    const plate = flatPlane(SIDE, SIDE, 110);
    const out = await dotsOf(plate, ppi, { lpi, angleDegOf: { p1: angleDeg }, dot });
    const [right, down] = peakOf(powerOf(out, true), SIDE, SIDE);
    const ruling = (Math.hypot(right, down) / SIDE) * ppi;
    const turn = dot === 'line' ? 180 : 90;
    const angle = ((Math.atan2(-down, right) * 180) / Math.PI + 360) % turn;
    const off = Math.abs(angle - (angleDeg % turn));
    expect(Math.abs(ruling / lpi - 1)).toBeLessThan(0.005);
    expect(Math.min(off, turn - off)).toBeLessThan(0.2);
  });

  it.each(['round', 'ellipse', 'line'])(
    'keeps the mean of every tint within half a percent, %s dots',
    async (dot) => {
      for (let percent = 2; percent < 100; percent += 8) {
        const plate = flatPlane(SIDE, SIDE, Math.round(percent * 2.55));
        const out = await dotsOf(plate, 600, { lpi: 85, angleDegOf: { p1: 15 }, dot });
        expect(Math.abs(percentOf(out.data) - percentOf(plate.data))).toBeLessThan(0.5);
      }
    },
  );

  it('shows all tones of a fade, more than a cell has pixels', async () => {
    const means = new Set<number>();
    for (let value = 100; value < 116; value++)
      means.add(percentOf((await dotsOf(flatPlane(512, 512, value), 600, { lpi: 85 })).data));
    expect(means.size).toBe(16);
  });
});

describe('an FM screen', () => {
  // source: R. Ulichney, Proc. IEEE 76 (1988): blue noise has its principal frequency at sqrt(g), hardly any power
  // below; the bound of 0.15 of white noise below half of it is what a void-and-cluster mask of 64 x 64 reaches (0.09)
  const lowPower = (dots: Uint8Array, side: number, share: number) => {
    const power = powerOf({ width: side, height: side, data: dots as never }, false);
    const bound = 0.5 * Math.sqrt(Math.min(share, 1 - share));
    let sum = 0;
    let count = 0;
    for (let i = 1; i < power.length; i++) {
      const x = Math.min(i % side, side - (i % side)) / side;
      const row = Math.floor(i / side);
      const y = Math.min(row, side - row) / side;
      if (Math.hypot(x, y) >= bound) continue;
      sum += power[i]!;
      count++;
    }
    return sum / count / (share * (1 - share) * side * side);
  };

  it.each([
    [0.05, 0.15],
    [0.1, 0.15],
    [0.25, 0.15],
    [0.5, 0.4],
    [0.75, 0.15],
    [0.9, 0.15],
  ])('of a tint of %d has less than %d of the low frequencies of white noise', async (share, bound) => {
    const plate = flatPlane(256, 256, Math.round(share * 255));
    const out = await dotsOf(plate, 600, { screen: 'fm', dotMm: 25.4 / 600 });
    expect(lowPower(out.data, 256, share)).toBeLessThan(bound);
    const random = randomOf(5);
    const white = drawnPlane(256, 256, () => (random() < share ? 255 : 0));
    expect(lowPower(white.data, 256, share)).toBeGreaterThan(0.8);
  });

  it('keeps the mean of every tint within half a percent, in dots of the size that was asked for', async () => {
    for (let percent = 2; percent < 100; percent += 8) {
      const plate = flatPlane(SIDE, SIDE, Math.round(percent * 2.55));
      const out = await dotsOf(plate, 1016, { screen: 'fm', dotMm: 0.1 });
      expect(Math.abs(percentOf(out.data) - percentOf(plate.data))).toBeLessThan(0.5);
      const blocks = drawnPlane(SIDE / 4, SIDE / 4, (x, y) => {
        const block = [0, 1, 2, 3].flatMap((v) => [
          ...out.data.subarray((4 * y + v) * SIDE + 4 * x).subarray(0, 4),
        ]);
        return new Set(block).size;
      });
      expect(new Set(blocks.data)).toEqual(new Set([1]));
    }
  });

  it('has a tile whose every threshold is met once', () => {
    const tile = blueNoise(64);
    expect(new Set(tile).size).toBe(64 * 64);
    expect(blueNoise(64)).toEqual(tile);
  });
});
