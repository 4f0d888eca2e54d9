import { describe, expect, it } from 'vitest';
import { depth } from '../../../workers/kernels/depth.ts';
import { columnDistance, FAR, squaredDistance } from '../../../workers/kernels/distance.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { flatPlane, picture, randomPicture, rowsOf, transposed } from '../support/pictures.ts';

const MOST = 65_534;

function columnsOf(plane: Plane, limit = MOST, framed = false): Uint16Array {
  const { width, height, data } = plane;
  const out = new Uint16Array(width * height).fill(7);
  columnDistance({ data, width, height, lowest: 255, highest: 255, limit, framed, out }, 0, width);
  return out;
}

function squaredOf(plane: Plane): Uint32Array {
  const { width, height } = plane;
  const out = new Uint32Array(width * height).fill(7);
  squaredDistance({ columns: columnsOf(plane, MOST, true), width, out }, 0, height);
  return out;
}

/** Places of sites, as pairs; a frame of sites just outside where it counts. */
function sitesOf({ width, height, data }: Plane, framed: boolean): [number, number][] {
  const sites: [number, number][] = [];
  const site = (x: number, y: number) =>
    x < 0 || y < 0 || x >= width || y >= height ? framed : data[y * width + x] === 255;
  for (let y = -1; y <= height; y++) for (let x = -1; x <= width; x++) if (site(x, y)) sites.push([x, y]);
  return sites;
}

function nearest2(sites: readonly [number, number][], x: number, y: number): number {
  return Math.min(...sites.map(([sx, sy]) => (sx - x) ** 2 + (sy - y) ** 2));
}

describe('the distance along columns', () => {
  it('counts pixels to the nearest site above or below', () => {
    const column = transposed(picture('..#...#..'));
    expect([...columnsOf(column)]).toEqual([2, 1, 0, 1, 2, 1, 0, 1, 2]);
  });

  it('is far where the column holds no site', () => {
    expect(rowsOf(columnsOf(picture('#.', '..')), 2)).toEqual([
      [0, FAR],
      [1, FAR],
    ]);
  });

  it('is far beyond its limit and exact up to it', () => {
    expect([...columnsOf(transposed(picture('......#')), 3)]).toEqual([FAR, FAR, FAR, 3, 2, 1, 0]);
    expect([...columnsOf(transposed(picture('#......')), 3)]).toEqual([0, 1, 2, 3, FAR, FAR, FAR]);
  });

  it('may count from a row of sites just above and below the picture', () => {
    expect([...columnsOf(flatPlane(1, 5), MOST, true)]).toEqual([1, 2, 3, 2, 1]);
    expect([...columnsOf(flatPlane(1, 7), 2, true)]).toEqual([1, 2, FAR, FAR, FAR, 2, 1]);
  });

  it('works on a range of columns and leaves the others alone', () => {
    const out = new Uint16Array(8).fill(7);
    const { data } = picture('#..#', '....');
    const args = { data, width: 4, height: 2, lowest: 255, highest: 255, limit: 9, framed: false, out };
    columnDistance(args, 1, 3);
    expect(rowsOf(out, 4)).toEqual([
      [7, FAR, FAR, 7],
      [7, FAR, FAR, 7],
    ]);
  });

  it('takes as sites the bytes lowest..highest', () => {
    const out = new Uint16Array(4);
    const data = Uint8Array.of(9, 10, 20, 21);
    columnDistance(
      { data, width: 4, height: 1, lowest: 10, highest: 20, limit: 5, framed: false, out },
      0,
      4,
    );
    expect([...out]).toEqual([FAR, 0, 0, FAR]);
  });
});

describe('the squared distance', () => {
  it('is 0 on sites and the sum of squares beside them', () => {
    const { data } = picture('.......', '.......', '.......', '...#...', '.......', '.......', '.......');
    const plane: Plane = { width: 7, height: 7, data };
    expect(rowsOf(squaredOf(plane), 7)).toEqual([
      [1, 1, 1, 1, 1, 1, 1],
      [1, 4, 4, 4, 4, 4, 1],
      [1, 4, 2, 1, 2, 4, 1],
      [1, 4, 1, 0, 1, 4, 1],
      [1, 4, 2, 1, 2, 4, 1],
      [1, 4, 4, 4, 4, 4, 1],
      [1, 1, 1, 1, 1, 1, 1],
    ]);
  });

  it('counts from the frame where there is no other site', () => {
    expect(rowsOf(squaredOf(flatPlane(5, 4)), 5)).toEqual([
      [1, 1, 1, 1, 1],
      [1, 4, 4, 4, 1],
      [1, 4, 4, 4, 1],
      [1, 1, 1, 1, 1],
    ]);
  });

  it('is 0 everywhere where every pixel is a site', () => {
    expect(squaredOf(flatPlane(4, 3, 255)).every((d2) => d2 === 0)).toBe(true);
  });

  it.each([0, 0.002, 0.02, 0.2, 0.7, 1])(
    'equals a search over all sites, %d of the pixels sites',
    (density) => {
      for (const [width, height] of [
        [37, 29],
        [1, 40],
        [40, 1],
        [64, 17],
      ] as const) {
        const plane = randomPicture(width, height, density, width + height);
        const sites = sitesOf(plane, true);
        const wanted = Uint32Array.from(plane.data, (_, i) =>
          nearest2(sites, i % width, Math.floor(i / width)),
        );
        expect(squaredOf(plane)).toEqual(wanted);
      }
    },
  );

  it('is the same seen in rows as in columns', () => {
    const plane = randomPicture(33, 47, 0.01, 3);
    const turned: Plane = transposed(plane);
    const other = squaredOf(turned);
    const back = Uint32Array.from(plane.data, (_, i) => other[(i % 33) * 47 + Math.floor(i / 33)]!);
    expect(squaredOf(plane)).toEqual(back);
  });

  it('stays exact far away, where its square passes 16 bits', () => {
    const plane = flatPlane(3001, 3);
    plane.data.fill(0);
    const columns = new Uint16Array(3001).fill(1000);
    const out = new Uint32Array(3001);
    squaredDistance({ columns, width: 3001, out }, 0, 1);
    expect([out[0], out[999], out[1500], out[2900]]).toEqual([1, 1_000_000, 1_000_000, 101 * 101]);
  });
});

describe('depth', () => {
  /** Each squared distance stands for itself. */
  const table = Uint8Array.from({ length: 26 }, (_, d2) => d2);

  function depthsOf(plane: Plane, beyond: number): Uint8Array {
    const { width, height } = plane;
    const out = new Uint8Array(width * height);
    depth({ columns: columnsOf(plane, 6), width, table, beyond, out }, 0, height);
    return out;
  }

  it('looks up what the squared distance to the nearest site counts as', () => {
    expect(rowsOf(depthsOf(picture('#....', '.....', '.....'), 99), 5)).toEqual([
      [0, 1, 4, 9, 16],
      [1, 2, 5, 10, 17],
      [4, 5, 8, 13, 20],
    ]);
  });

  it('is `beyond` where the table ends, and where there is no site at all', () => {
    expect([...depthsOf(picture('#......'), 99)]).toEqual([0, 1, 4, 9, 16, 25, 99]);
    expect([...depthsOf(picture('...'), 255)]).toEqual([255, 255, 255]);
  });

  it.each([0.01, 0.1, 0.5])('equals a search over all sites, %d of the pixels sites', (density) => {
    const plane = randomPicture(41, 33, density, 8);
    const sites = sitesOf(plane, false);
    const wanted = Uint8Array.from(plane.data, (_, i) => {
      const d2 = nearest2(sites, i % 41, Math.floor(i / 41));
      return d2 > 25 ? 99 : d2;
    });
    expect(depthsOf(plane, 99)).toEqual(wanted);
  });
});
