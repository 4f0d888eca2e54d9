import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { weighed } from '../../../workers/nodes/clean-weight.ts';
import { localTools } from '../support/local-tools.ts';
import { drawnPlane, flatPlane, picture, randomPicture } from '../support/pictures.ts';
import { bordersOf, overlaps, piecesOf } from '../support/pieces.ts';
import { randomOf } from '../support/random.ts';

const moved = (line: Plane, px: number) => weighed(line, px, localTools().tools);

/** Loose strokes, dots and rings, soft edges here and there, running off the edge now and then. */
function scribble(width: number, height: number, seed: number): Plane {
  const random = randomOf(seed);
  const marks = Array.from({ length: 3 + Math.floor(random() * 12) }, () => {
    const [x, y, r] = [random() * width, random() * height, random() * 9];
    const [dx, dy, thick] = [random() * 24 - 12, random() * 24 - 12, 0.4 + random() * 2];
    const ring = random() < 0.4;
    return (px: number, py: number) => {
      if (ring) return Math.abs(Math.hypot(px - x, py - y) - r) - thick;
      const t = Math.min(1, Math.max(0, ((px - x) * dx + (py - y) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(px - x - t * dx, py - y - t * dy) - thick;
    };
  });
  return drawnPlane(width, height, (x, y) => {
    const nearest = Math.min(...marks.map((mark) => mark(x, y)));
    return Math.round(255 * Math.min(1, Math.max(0, 0.5 - nearest)));
  });
}

/** The pieces and what borders on what are the same before and after. */
function sameTopology(before: Plane, after: Plane): void {
  const [was, is] = [piecesOf(before), piecesOf(after)];
  expect([is.lines, is.papers]).toEqual([was.lines, was.papers]);
  const lines = overlaps(was.line, is.line);
  const papers = overlaps(was.paper, is.paper);
  expect([lines.size, papers.size]).toEqual([was.lines, was.papers]);
  const renamed = new Map([...lines].map((pair) => pair.split('-') as [string, string]));
  const paperNames = new Map([...papers].map((pair) => pair.split('-') as [string, string]));
  const expected = [...bordersOf(before, was)].map((pair) => {
    const [line, paper] = pair.split('-') as [string, string];
    return `${renamed.get(line)}-${paperNames.get(paper)}`;
  });
  expect(new Set(expected)).toEqual(bordersOf(after, is));
}

const size = fc.integer({ min: 5, max: 48 });
const radius = fc.oneof(fc.double({ min: 0.1, max: 7, noNaN: true }), fc.constantFrom(0.5, 1, 2, 3));
const sign = fc.constantFrom(-1, 1);

describe('a line made heavier or finer', () => {
  it('keeps its pieces, its holes and what borders on what: strokes and rings', () =>
    fc.assert(
      fc.asyncProperty(size, size, fc.nat(), radius, sign, async (width, height, seed, px, way) => {
        const line = scribble(width, height, seed);
        sameTopology(line, await moved(line, px * way));
      }),
      { numRuns: 300 },
    ));

  it('keeps them in noise of any density', () =>
    fc.assert(
      fc.asyncProperty(
        size,
        size,
        fc.nat(),
        fc.double({ min: 0.02, max: 0.95, noNaN: true }),
        radius,
        sign,
        async (width, height, seed, density, px, way) => {
          const line = randomPicture(width, height, density, seed);
          sameTopology(line, await moved(line, px * way));
        },
      ),
      { numRuns: 300 },
    ));

  it('is nowhere lighter than before, or nowhere darker', async () => {
    for (let seed = 0; seed < 10; seed++) {
      const line = scribble(40, 30, seed);
      const [heavier, finer] = [await moved(line, 2.4), await moved(line, -2.4)];
      line.data.forEach((value, i) => {
        expect(heavier.data[i]).toBeGreaterThanOrEqual(value);
        expect(finer.data[i]).toBeLessThanOrEqual(value);
      });
    }
  });

  it('by nothing is the same plane', async () => {
    const line = scribble(20, 20, 1);
    expect(await moved(line, 0)).toBe(line);
  });
});

describe('heavier', () => {
  it('leaves one open pixel between two lines, halfway', async () => {
    const bars = drawnPlane(40, 20, (x) => (x < 10 || (x >= 15 && x < 22) ? 255 : 0));
    const row = [...(await moved(bars, 3)).data.subarray(5 * 40, 5 * 40 + 28)];
    expect(row.map((value) => (value >= 128 ? '#' : '.')).join('')).toBe('############.############...');
  });

  it('leaves a pixel of the counter of a letter', async () => {
    const { data } = await moved(
      picture('.......', '.#####.', '.#...#.', '.#...#.', '.#####.', '.......'),
      4,
    );
    const open = [...data].flatMap((value, i) => (value < 128 ? [[i % 7, Math.floor(i / 7)]] : []));
    const inside = open.filter(([x, y]) => x! > 1 && x! < 5 && y! > 1 && y! < 4);
    expect(inside).toHaveLength(1);
  });

  it('fills what it may: a dot grows to a disc', async () => {
    const dot = drawnPlane(21, 21, (x, y) => (x === 10 && y === 10 ? 255 : 0));
    const { data } = await moved(dot, 5);
    expect(data.filter((value) => value >= 128)).toHaveLength(
      drawnPlane(21, 21, (x, y) => (Math.hypot(x - 10, y - 10) <= 5.5 ? 1 : 0)).data.filter(Boolean).length,
    );
  });

  it('has nothing to do where all is line or all is paper', async () => {
    for (const value of [0, 255]) {
      const flat = flatPlane(12, 9, value);
      expect((await moved(flat, 2)).data).toEqual(flat.data);
      expect((await moved(flat, -2)).data).toEqual(flat.data);
    }
  });
});

describe('finer', () => {
  it('leaves the middle of a line that is thinner than what goes', async () => {
    const bar = drawnPlane(30, 15, (x, y) => (y >= 5 && y < 10 && x >= 4 && x < 26 ? 255 : 0));
    const { data } = await moved(bar, -4);
    const rows = Array.from({ length: 15 }, (_, y) => [...data.subarray(y * 30, y * 30 + 30)]);
    const widths = rows.map((row) => row.filter((value) => value >= 128).length);
    expect(widths[7]).toBeGreaterThanOrEqual(22 - 5);
    expect(widths.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual(22);
  });

  it('leaves a line of one pixel as long as it was, straight or askew', async () => {
    const lines = drawnPlane(40, 30, (x, y) =>
      (y === 4 && x >= 5 && x < 35) || (x - y === 3 && y >= 8 && y < 26) ? 255 : 0,
    );
    expect((await moved(lines, -3)).data).toEqual(lines.data);
  });

  it('leaves a stroke that tapers to a point nearly as long as it was', async () => {
    const taper = drawnPlane(90, 30, (x, y) =>
      x >= 10 && x < 80 && Math.abs(y - 15) <= (x - 10) / 16 ? 255 : 0,
    );
    const finer = await moved(taper, -6);
    const columns = Array.from({ length: 90 }, (_, x) => x).filter((x) =>
      Array.from({ length: 30 }, (_, y) => finer.data[y * 90 + x]!).some((value) => value >= 128),
    );
    expect([columns[0], columns.at(-1)! >= 74]).toEqual([10, true]);
  });

  it('takes a bump off a thick shape and leaves no whisker', async () => {
    const bumpy = drawnPlane(60, 40, (x, y) =>
      (y >= 10 && x >= 5 && x < 55) || (y >= 8 && x === 30) ? 255 : 0,
    );
    const { data } = await moved(bumpy, -3);
    expect(data.subarray(0, 13 * 60).some((value) => value >= 128)).toBe(false);
  });

  it('leaves something of a dot', async () => {
    const { data } = await moved(picture('.....', '.##..', '.##..', '.....'), -3);
    expect(data.some((value) => value >= 128)).toBe(true);
  });
});
