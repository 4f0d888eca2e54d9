import { describe, expect, it } from 'vitest';
import { evenLight } from '../../../workers/kernels/even-light.ts';
import { paperBlocks } from '../../../workers/kernels/paper-blocks.ts';
import { LIGHT_STEP, paperLight } from '../../../workers/kernels/paper-light.ts';
import { drawnPlane, flatPlane } from '../support/pictures.ts';

describe('the paper of a block', () => {
  it('is what its brightest fifth reaches, though four fifths are line', () => {
    const line = drawnPlane(20, 10, (x) => (x < 10 ? (x < 3 ? 15 : 250) : x % 2 === 0 ? 240 : 30));
    const levels = new Uint8Array(2);
    paperBlocks({ line, side: 10, levels }, 0, 1);
    expect([...levels]).toEqual([240, 225]);
  });

  it('counts blocks at the edge by the pixels they have', () => {
    const line = drawnPlane(13, 12, (x, y) => (x >= 10 || y >= 10 ? 80 : 5));
    const levels = new Uint8Array(4);
    paperBlocks({ line, side: 10, levels }, 0, 2);
    expect([...levels]).toEqual([250, 175, 175, 175]);
  });
});

describe('the light on the sheet', () => {
  const lightOf = (rows: number[][], sure: number) =>
    paperLight({ levels: Uint8Array.from(rows.flat()), columns: rows[0]!.length, rows: rows.length, sure });
  const wide = (level: (x: number, y: number) => number) =>
    Array.from({ length: 9 }, (_, y) => Array.from({ length: 12 }, (_, x) => level(x, y)));

  it('is followed into deep shade, far below what is surely paper', () => {
    const { light, spread } = lightOf(
      wide((x) => 240 - 14 * x),
      200,
    );
    expect(light[4 * 12 + 6]).toBe((240 - 14 * 6) * LIGHT_STEP);
    expect(spread).toBeGreaterThan(0.5);
  });

  it('over a solid is that of the paper around it', () => {
    const { light, spread } = lightOf(
      wide((x, y) => (x > 2 && x < 9 && y > 2 && y < 7 ? 20 : 230)),
      120,
    );
    expect(new Set(light)).toEqual(new Set([230 * LIGHT_STEP]));
    expect(spread).toBe(0);
  });

  it('is full where there is no paper at all', () => {
    const { light, spread } = lightOf(
      wide(() => 0),
      120,
    );
    expect([new Set(light), spread]).toEqual([new Set([255 * LIGHT_STEP]), 0]);
  });
});

describe('evening', () => {
  it('divides the light out: paper is bare, line keeps its share', () => {
    const line = drawnPlane(40, 40, (x, y) => (y < 20 ? 55 : x < 20 ? 155 : 255));
    const out = flatPlane(40, 40, 9);
    const light = new Uint16Array(16).fill(200 * LIGHT_STEP);
    evenLight({ line, out, light, side: 10 }, 0, 40);
    expect([out.data[0], out.data[30 * 40 + 5], out.data[30 * 40 + 30]]).toEqual([0, 128, 255]);
  });

  it('goes from block to block in a straight line', () => {
    const line = flatPlane(40, 10, 155);
    const out = flatPlane(40, 10, 9);
    const light = Uint16Array.from([100, 120, 140, 160], (level) => level * LIGHT_STEP);
    evenLight({ line, out, light, side: 10 }, 0, 10);
    const wanted = Array.from({ length: 40 }, (_, x) => {
      const sheet = Math.min(160, Math.max(100, 100 + 2 * (x - 4.5)));
      return 255 - Math.round((100 / sheet) * 255);
    });
    out.data.subarray(0, 40).forEach((value, x) => {
      expect(Math.abs(value - wanted[x]!)).toBeLessThanOrEqual(1);
    });
  });
});
