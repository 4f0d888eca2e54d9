import { describe, expect, it } from 'vitest';
import { BadInput } from '../../../src/graph/complaint.ts';
import type { PictureHead } from '../../../workers/files/inspect.ts';
import { physicalSize } from '../../../workers/files/physical-size.ts';

const UNSET = { widthMm: null, ppi: null, vectorPpi: 600 };

const png = (ppi: number | null, y = ppi): PictureHead => ({
  format: 'png',
  width: 900,
  height: 600,
  bands: 1,
  ppi: ppi === null || y === null ? null : { x: ppi, y },
  sizeMm: null,
  notes: [],
});

function sizeOf(head: PictureHead, settings: Partial<typeof UNSET | { widthMm: number; ppi: number }> = {}) {
  const { ppi, complaints } = physicalSize(head, { ...UNSET, ...settings }, 'line.png');
  return [ppi, complaints.map(({ code }) => code).join()];
}

describe('the resolution a drawing prints at', () => {
  it.each([72, 96, 132])('is not the %d ppi that programs write without knowing any', (ppi) => {
    expect(sizeOf(png(ppi))).toEqual([300, 'size-assumed']);
  });

  it('is assumed to be 300 ppi where the file says nothing', () => {
    expect(sizeOf(png(null))).toEqual([300, 'size-assumed']);
  });

  it.each([71, 73, 95, 97, 100, 131, 133, 150, 300, 600, 1200])('is the %d ppi of the file', (ppi) => {
    expect(sizeOf(png(ppi))).toEqual([ppi, '']);
  });

  it.each([0, 1, 19, 12_001, Number.POSITIVE_INFINITY])('is never %d ppi', (ppi) => {
    expect(sizeOf(png(ppi))).toEqual([300, 'size-assumed']);
  });

  it.each([
    [599.9988, 600],
    [300.0006, 300],
    [72.009, 300],
    [350.5, 350.5],
  ])('of %d ppi, as a file counts by the metre, is %d', (declared, ppi) => {
    expect(sizeOf(png(declared))[0]).toBe(ppi);
  });

  it('follows from the width that is set, whatever the file says', () => {
    for (const declared of [null, 72, 600])
      expect(sizeOf(png(declared), { widthMm: 450 })).toEqual([50.8, '']);
  });

  it('is what is set, whatever the file says, also where a file would not be believed', () => {
    for (const declared of [null, 72, 600])
      for (const ppi of [72, 254]) expect(sizeOf(png(declared), { ppi })).toEqual([ppi, '']);
  });

  it('cannot be set twice, by width and as such', () => {
    expect(() => sizeOf(png(600), { widthMm: 450, ppi: 300 })).toThrow(BadInput);
  });

  it('is the one across where pixels are not square, and the drawing is said to be stretched', () => {
    expect(sizeOf(png(600, 300))).toEqual([600, 'pixels-not-square']);
    expect(sizeOf(png(600, 599))).toEqual([600, '']);
  });

  it('of a vector drawing is the one it is drawn out at; its size is assumed where it has none', () => {
    const svg = (sizeMm: [number, number] | null): PictureHead => ({ ...png(null), format: 'svg', sizeMm });
    expect(sizeOf(svg([38.1, 25.4]))).toEqual([600, '']);
    expect(sizeOf(svg(null))).toEqual([600, 'size-assumed']);
    expect(sizeOf(svg(null), { widthMm: 45 })).toEqual([600, '']);
  });

  it('is told in mm where it is assumed, with what to do', () => {
    const [complaint] = physicalSize(png(72), UNSET, 'line.png').complaints;
    expect(complaint!.severity).toBe('warning');
    expect(complaint!.message).toMatch(/^line\.png: .*72 ppi.*76\.2 x 50\.8 mm.*Set its printed width/);
  });
});
