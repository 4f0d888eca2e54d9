import { describe, expect, it } from 'vitest';
import { type Affine, offset } from '../../../workers/kernels/offset.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { drawnPlane, flatPlane, planeOf, randomPlane, rowsOf } from '../support/pictures.ts';

const STILL: Affine = { xx: 1, xy: 0, x0: 0, yx: 0, yy: 1, y0: 0 };

function placed(plate: Plane, place: Partial<Affine>): Plane {
  const out = flatPlane(plate.width, plate.height, 9);
  offset({ plate, out, place: { ...STILL, ...place } }, 0, plate.height);
  return out;
}

describe('an offset plate', () => {
  const plate = randomPlane(23, 17, 2);

  it('is the same where it comes from its own place', () => {
    expect(placed(plate, {})).toEqual(plate);
  });

  it('shifts by whole pixels exactly, and brings in paper', () => {
    const numbers = planeOf([
      [1, 2, 3],
      [4, 5, 6],
      [7, 8, 9],
    ]);
    expect(rowsOf(placed(numbers, { x0: -1 }).data, 3)).toEqual([
      [0, 1, 2],
      [0, 4, 5],
      [0, 7, 8],
    ]);
    expect(rowsOf(placed(numbers, { y0: 1 }).data, 3)).toEqual([
      [4, 5, 6],
      [7, 8, 9],
      [0, 0, 0],
    ]);
    const far = drawnPlane(23, 17, (x, y) => (x < 5 || y + 3 >= 17 ? 0 : plate.data[(y + 3) * 23 + x - 5]!));
    expect(placed(plate, { x0: -5, y0: 3 })).toEqual(far);
  });

  it('halfway between two pixels is their mean, rounded up', () => {
    expect([...placed(planeOf([[10, 20, 21]]), { x0: 0.5 }).data]).toEqual([15, 21, 11]);
    expect([...placed(planeOf([[10], [20], [0]]), { y0: -0.5 }).data]).toEqual([5, 15, 10]);
  });

  it('a quarter of the way is a quarter of the change', () => {
    expect([...placed(planeOf([[0, 100, 100, 0]]), { x0: 0.25 }).data]).toEqual([25, 100, 75, 0]);
  });

  it('halfway both ways is the mean of four', () => {
    expect(
      placed(
        planeOf([
          [0, 40],
          [80, 200],
        ]),
        { x0: 0.5, y0: 0.5 },
      ).data[0],
    ).toBe(80);
  });

  it('keeps a solid solid inside and fades to paper within a pixel of its edge', () => {
    const moved = placed(flatPlane(6, 1, 255), { x0: -1.5 });
    expect([...moved.data]).toEqual([0, 128, 255, 255, 255, 255]);
  });

  it('turns by a quarter without loss', () => {
    const square = planeOf([
      [1, 2, 3],
      [4, 5, 6],
      [7, 8, 9],
    ]);
    const turned = placed(square, { xx: 0, xy: 1, x0: 0, yx: -1, yy: 0, y0: 2 });
    expect(rowsOf(turned.data, 3)).toEqual([
      [7, 4, 1],
      [8, 5, 2],
      [9, 6, 3],
    ]);
  });

  it('prints nothing where it lies wholly off the sheet', () => {
    for (const place of [{ x0: 500 }, { x0: -500 }, { y0: 500 }, { y0: -500 }])
      expect(placed(plate, place)).toEqual(flatPlane(23, 17));
  });

  it('never leaves the range of the values it comes from', () => {
    const steep = drawnPlane(40, 30, (x, y) => ((x + y) % 2 === 0 ? 255 : 0));
    for (const part of [0.1, 0.33, 0.5, 0.99]) {
      const out = placed(flatPlane(40, 30, 200), { x0: part, y0: -part }).data;
      expect(Math.max(...out)).toBe(200);
      expect(Math.max(...placed(steep, { x0: part, yy: 0.999 }).data)).toBeLessThanOrEqual(255);
    }
  });
});
