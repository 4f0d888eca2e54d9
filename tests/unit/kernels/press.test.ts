import { describe, expect, it } from 'vitest';
import { inkShare } from '../../../workers/kernels/ink-share.ts';
import { latticeOf, type Octave, octavesOf, textureRow } from '../../../workers/kernels/lattice.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { pressEdges, rimTable } from '../../../workers/kernels/press-edges.ts';
import { overprints, pressPrint } from '../../../workers/kernels/press-print.ts';
import { flatPlane, randomPlane } from '../support/pictures.ts';

const [WIDTH, HEIGHT] = [73, 41];
const at = ({ data, width }: Plane, x: number, y: number) => data[y * width + x]!;

function each(visit: (x: number, y: number) => void, width = WIDTH, height = HEIGHT): void {
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) visit(x, y);
}

describe('the share of ink about a pixel', () => {
  it.each([1, 4, 30, 100])(
    'is counted over its window, %d px each way, whatever the picture cuts off',
    (reach) => {
      const plate = randomPlane(WIDTH, HEIGHT, 3);
      const out = flatPlane(WIDTH, HEIGHT);
      for (let y = 0; y < HEIGHT; y += 7)
        inkShare({ plate, reach, least: 90, out }, y, Math.min(HEIGHT, y + 7));
      each((x, y) => {
        let [inked, all] = [0, 0];
        for (let v = Math.max(0, y - reach); v <= Math.min(HEIGHT - 1, y + reach); v++)
          for (let u = Math.max(0, x - reach); u <= Math.min(WIDTH - 1, x + reach); u++) {
            all++;
            if (at(plate, u, v) >= 90) inked++;
          }
        expect(at(out, x, y)).toBe(Math.floor((inked * 255) / all + 0.5));
      });
    },
  );
});

/** One place of a texture, worked out by itself: value noise as the lattice module describes it. */
function textureAt(
  lattice: Int8Array,
  octaves: readonly Octave[],
  x: number,
  y: number,
  pixelMm: number,
): number {
  let sum = 0;
  for (const { perMm, weight, cos, sin, dx, dy } of octaves) {
    const [stepU, stepV] = [cos, sin].map((part) => Math.round(part * perMm * pixelMm * 65536)) as [
      number,
      number,
    ];
    const yMm = (y + 0.5) * pixelMm;
    const u = (Math.round((dx - sin * perMm * yMm) * 65536) + (stepU >> 1) + x * stepU) | 0;
    const v = (Math.round((dy + cos * perMm * yMm) * 65536) + (stepV >> 1) + x * stepV) | 0;
    const fade = (place: number) => {
      const f = ((place >> 8) & 255) / 256;
      return Math.round(256 * f * f * (3 - 2 * f));
    };
    const corner = (i: number, j: number) =>
      lattice[((((v >> 16) + j) & 255) << 8) | (((u >> 16) + i) & 255)]!;
    const upper = corner(0, 0) * 256 + (corner(1, 0) - corner(0, 0)) * fade(u);
    const lower = corner(0, 1) * 256 + (corner(1, 1) - corner(0, 1)) * fade(u);
    sum = Math.fround(sum + (upper * 256 + (lower - upper) * fade(v)) * (weight / (127 * 65536)));
  }
  return sum;
}

describe('a row of texture', () => {
  it.each([0.3, 2, 40])('of blotches of %d mm is what each of its places is by itself', (sizeMm) => {
    const lattice = latticeOf(5);
    const octaves = octavesOf(sizeMm, 3, 9, 0.1);
    const row = new Float32Array(400);
    for (const y of [0, 17, 5000]) {
      textureRow(lattice, octaves, y, 0.1, row);
      row.forEach((value, x) => {
        expect(value).toBe(textureAt(lattice, octaves, x, y, 0.1));
      });
      const part = new Float32Array(400);
      textureRow(lattice, octaves, y, 0.1, part, 133, 240);
      expect(part.subarray(133, 240)).toEqual(row.subarray(133, 240));
    }
  });
});

describe('rims and swollen edges', () => {
  it.each([0.2, 0.9])('are at each pixel what share of ink and texture say, at a strength of %d', (give) => {
    const [plate, rim, about] = [1, 2, 3].map((seed) => randomPlane(WIDTH, HEIGHT, seed)) as [
      Plane,
      Plane,
      Plane,
    ];
    const lattice = latticeOf(8);
    const octaves = octavesOf(3, 3, 4, 0.1);
    const rims = rimTable(0.3);
    const out = flatPlane(WIDTH, HEIGHT);
    const flooding = { share: about, give };
    pressEdges(
      { plate, out, squeeze: { share: rim, rims }, flooding, lattice, octaves, pixelMm: 0.1 },
      0,
      HEIGHT,
    );
    each((x, y) => {
      const pressed = rims[at(rim, x, y) * 256 + at(plate, x, y)]!;
      const ink = at(about, x, y);
      const reached = ink / 127.5 - 1 + give * (0.5 + 2.2 * textureAt(lattice, octaves, x, y, 0.1));
      const crept = reached > 0 ? 255 * Math.min(1, reached * 4) * Math.min(1, ink / 64) : 0;
      expect(at(out, x, y)).toBe(Math.max(pressed, Math.floor(crept + 0.5)));
    });
  });
});

describe('ink laid again', () => {
  it('covers what is bare by its share, as an overprint of the same ink', () => {
    const laid = overprints(0.25);
    for (const [there, comes, wanted] of [
      [0, 255, 64],
      [255, 255, 255],
      [100, 0, 100],
      [128, 128, 144],
    ])
      expect(laid[there! * 256 + comes!]).toBe(wanted);
  });

  it('is mirrored and shifted as it is told, and stops at the edge of the plate', () => {
    const plate = randomPlane(WIDTH, HEIGHT, 6);
    for (const [xx, x0, y0] of [
      [1, -9, 3],
      [-1, WIDTH - 1 + 5, -4],
      [-1, 20, 0],
    ] as const) {
      const out = flatPlane(WIDTH, HEIGHT);
      const laid = overprints(0.5);
      const repeats = [{ xx, yy: 1 as const, x0, y0, laid }];
      pressPrint({ plate, out, pixelMm: 0.1, map: null, film: 1, repeats, spots: [] }, 0, HEIGHT);
      each((x, y) => {
        const [u, v] = [xx * x + x0, y + y0];
        const comes = u >= 0 && u < WIDTH && v >= 0 && v < HEIGHT ? at(plate, u, v) : 0;
        expect(at(out, x, y)).toBe(laid[at(plate, x, y) * 256 + comes]);
      });
    }
  });

  it('takes the share of the map at each pixel, between cells and beyond the last', () => {
    const plate = randomPlane(WIDTH, HEIGHT, 7);
    const out = flatPlane(WIDTH, HEIGHT);
    const data = Float32Array.from({ length: 12 }, (_, i) => 1 - i / 15);
    const map = { data, width: 4, height: 3, cellMm: 1.7 };
    pressPrint({ plate, out, pixelMm: 0.1, map, film: 0.9, repeats: [], spots: [] }, 0, HEIGHT);
    const cell = (column: number, row: number) => data[Math.min(2, row) * 4 + Math.min(3, column)]!;
    each((x, y) => {
      const u = Math.min(3, Math.max(0, ((x + 0.5) * 0.1) / 1.7 - 0.5));
      const v = Math.min(2, Math.max(0, ((y + 0.5) * 0.1) / 1.7 - 0.5));
      const [i, j] = [Math.floor(u), Math.floor(v)];
      const upper = cell(i, j) + (cell(i + 1, j) - cell(i, j)) * (u - i);
      const lower = cell(i, j + 1) + (cell(i + 1, j + 1) - cell(i, j + 1)) * (u - i);
      const kept = (upper + (lower - upper) * (v - j)) * 0.9;
      expect(Math.abs(at(out, x, y) - at(plate, x, y) * kept)).toBeLessThan(0.51);
    });
  });
});
