import { describe, expect, it } from 'vitest';
import { columnDistance } from '../../../workers/kernels/distance.ts';
import { heavier } from '../../../workers/kernels/heavier.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import {
  drawnPlane,
  flatPlane,
  mirrored,
  negative,
  picture,
  planeOf,
  randomPicture,
  rowsOf,
  transposed,
} from '../support/pictures.ts';

function weighed(line: Plane, radius: number, inverted = false): Plane {
  const { width, height, data } = line;
  const columns = new Uint16Array(width * height);
  const [lowest, highest] = inverted ? [0, 254] : [1, 255];
  const limit = Math.ceil(radius) + 1;
  columnDistance({ data, width, height, lowest, highest, limit, framed: false, out: columns }, 0, width);
  const out = flatPlane(width, height, 9);
  heavier({ line, columns, radius, inverted, out }, 0, height);
  return out;
}

const rows = (plane: Plane) => rowsOf(plane.data, plane.width);

/** Soft marks on much paper. */
function softPicture(seed: number): Plane {
  const marks = randomPicture(40, 30, 0.03, seed);
  const tones = [255, 128, 30];
  return drawnPlane(40, 30, (x, y) => (marks.data[y * 40 + x] === 0 ? 0 : tones[(x + y) % 3]!));
}

describe('a heavier line', () => {
  it('grows by exactly one pixel on each side with a radius of one', () => {
    expect(rows(weighed(planeOf([[0, 0, 0, 255, 255, 0, 0, 0]]), 1))).toEqual([
      [0, 0, 255, 255, 255, 255, 0, 0],
    ]);
    const upright = transposed(planeOf([[0, 0, 0, 255, 0, 0, 0]]));
    expect([...weighed(upright, 1).data]).toEqual([0, 0, 255, 255, 255, 0, 0]);
  });

  it('grows by part of a pixel as a soft edge', () => {
    expect(rows(weighed(planeOf([[0, 0, 255, 0, 0]]), 0.4))).toEqual([[0, 102, 255, 102, 0]]);
    expect(rows(weighed(planeOf([[0, 0, 0, 255, 0, 0, 0]]), 1.4))).toEqual([[0, 102, 255, 255, 255, 102, 0]]);
  });

  it('grows a dot into a disc', () => {
    const weights = rows(weighed(picture('.....', '.....', '..#..', '.....', '.....'), 1));
    const corner = Math.round(255 * (2 - Math.SQRT2));
    expect(weights).toEqual([
      [0, 0, 0, 0, 0],
      [0, corner, 255, corner, 0],
      [0, 255, 255, 255, 0],
      [0, corner, 255, corner, 0],
      [0, 0, 0, 0, 0],
    ]);
  });

  it('keeps its soft edge, one pixel farther out', () => {
    expect(rows(weighed(planeOf([[0, 0, 0, 100, 255, 255]]), 1))).toEqual([[0, 0, 100, 255, 255, 255]]);
  });

  it('is unchanged as the radius goes to 0', () => {
    const line = softPicture(1);
    expect(weighed(line, 0.001)).toEqual(line);
    expect(weighed(line, 0.001, true)).toEqual(line);
  });

  it('is nowhere lighter than before, and nowhere lighter than with a smaller radius', () => {
    const line = softPicture(2);
    const steps = [line, ...[0.3, 0.9, 1, 1.7, 3.2].map((radius) => weighed(line, radius))];
    for (let k = 1; k < steps.length; k++)
      expect(steps[k]!.data.every((value, i) => value >= steps[k - 1]!.data[i]!)).toBe(true);
  });

  it.each([0.5, 1, 2.3, 4])('by %d px grows alike to all sides', (radius) => {
    const line = softPicture(3);
    const grown = weighed(line, radius);
    expect(weighed(mirrored(line), radius)).toEqual(mirrored(grown));
    expect(weighed(transposed(line), radius)).toEqual(transposed(grown));
  });

  it.each([0.5, 1, 2.3])(
    'equals the greatest of min(weight, neighbour) over a soft disc of %d px',
    (radius) => {
      const line = softPicture(4);
      const reach = Math.ceil(radius);
      const value = (x: number, y: number) =>
        x < 0 || y < 0 || x >= 40 || y >= 30 ? 0 : line.data[y * 40 + x]!;
      const wanted = drawnPlane(40, 30, (x, y) => {
        let best = value(x, y);
        for (let dy = -reach; dy <= reach; dy++)
          for (let dx = -reach; dx <= reach; dx++) {
            const weight = Math.round(255 * Math.min(1, Math.max(0, radius + 1 - Math.hypot(dx, dy))));
            best = Math.max(best, Math.min(weight, value(x + dx, y + dy)));
          }
        return best;
      });
      expect(weighed(line, radius)).toEqual(wanted);
    },
  );

  it('stays what it is where all is line or all is paper', () => {
    expect(weighed(flatPlane(6, 5, 255), 2)).toEqual(flatPlane(6, 5, 255));
    expect(weighed(flatPlane(6, 5), 2)).toEqual(flatPlane(6, 5));
  });
});

describe('a finer line', () => {
  it.each([0.4, 1, 2.3])('by %d px is what a heavier paper leaves of it', (radius) => {
    const line = negative(softPicture(5));
    expect(weighed(line, radius, true)).toEqual(negative(weighed(negative(line), radius)));
  });

  it('loses exactly one pixel on each side with a radius of one, and at the frame none', () => {
    expect(rows(weighed(planeOf([[0, 255, 255, 255, 255, 0]]), 1, true))).toEqual([[0, 0, 255, 255, 0, 0]]);
    expect(rows(weighed(planeOf([[255, 255, 255, 255, 0]]), 1, true))).toEqual([[255, 255, 255, 0, 0]]);
  });
});
