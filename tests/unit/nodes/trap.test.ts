import { describe, expect, it } from 'vitest';
import { trap } from '../../../workers/kernels/trap.ts';
import type { Sketch } from '../support/fills.ts';
import { emptyLabels, flatPlane, randomPlane } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';
import { slowTrap } from '../support/slow-trap.ts';
import { trapped } from '../support/trapped.ts';

const PPI = 600;
const SIDE = 120;
const inSquare = (x: number, y: number) => Math.min(x, y) >= 40 && Math.max(x, y) < 80;

/** A light square (region 2) in a dark field (region 1), at 600 ppi; light is plate 1, dark plate 3. */
const square = (change: Partial<Sketch> = {}): Sketch => ({
  width: SIDE,
  height: SIDE,
  ppi: PPI,
  region: (x, y) => (inSquare(x, y) ? 2 : 1),
  tints: [
    [0, 0, 0],
    [0, 0, 255],
    [255, 0, 0],
  ],
  inks: [{}, {}, {}],
  ...change,
});

/** Inked pixels along a row or column from the middle of the square outwards to the left. */
const inkedFrom = (data: Uint8Array, x: number, row = 60) =>
  [...data.subarray(row * SIDE, row * SIDE + SIDE)].slice(0, x).filter((value) => value > 0).length;

describe('trap between a light square and a dark field, no line (case 8)', () => {
  it('at 0.35 mm the light plate grows 8 px on every side, and the hole in the dark stays', async () => {
    const before = (await trapped(square(), { widthMm: 0 })).plates.map(({ coverage }) => coverage.data);
    const { plates, traps } = await trapped(square(), { widthMm: 0.35 });
    const [light, , dark] = plates.map(({ coverage }) => coverage.data);
    expect(dark).toEqual(before[2]);
    const row = [...light!.subarray(60 * SIDE, 61 * SIDE)];
    expect([row.indexOf(255), row.lastIndexOf(255)]).toEqual([40 - 8, 79 + 8]);
    const column = Array.from({ length: SIDE }, (_, y) => light![y * SIDE + 60]);
    expect([column.indexOf(255), column.lastIndexOf(255)]).toEqual([40 - 8, 79 + 8]);
    expect(traps!.map(({ does, reason, widthMm }) => [does, reason, widthMm])).toEqual([
      ['spread', 'lighter-spreads', 0.35],
    ]);
  });

  it('turns where the light ink is opaque and prints last: the dark spreads under it', async () => {
    const opaqueLast = square({
      tints: [
        [0, 0],
        [255, 0],
        [0, 255],
      ],
      inks: [{ lab: [20, 1, 1] }, { lab: [85, 2, 60], opacity: 0.9 }],
    });
    const { plates, traps } = await trapped(opaqueLast, { widthMm: 0.35 });
    const [dark, light] = plates.map(({ coverage }) => coverage.data);
    expect(inkedFrom(dark!, 60)).toBe(40 + 8);
    expect(inkedFrom(light!, 60)).toBe(20);
    expect(traps!.map(({ from, reason }) => [from, reason])).toEqual([['first', 'under-opaque']]);
  });

  it('does not turn for a translucent light over an opaque dark that was printed first', async () => {
    const opaqueFirst = square({
      tints: [
        [0, 0],
        [255, 0],
        [0, 255],
      ],
      inks: [{ lab: [20, 1, 1], opacity: 0.9 }, { lab: [85, 2, 60] }],
    });
    const { plates, traps } = await trapped(opaqueFirst, { widthMm: 0.35 });
    const [dark, light] = plates.map(({ coverage }) => coverage.data);
    expect(inkedFrom(dark!, 60)).toBe(40);
    expect(inkedFrom(light!, 60)).toBe(20 + 8);
    expect(traps!.map(({ from, reason }) => [from, reason])).toEqual([['second', 'lighter-spreads']]);
  });

  it('a width of its own counts for one border, and 0 leaves it alone', async () => {
    const wide = await trapped(square(), { widthMm: 0.1, pairs: [{ between: ['r2', 'r1'], widthMm: 0.5 }] });
    expect(inkedFrom(wide.plates[0]!.coverage.data, 60)).toBe(20 + 11);
    const off = await trapped(square(), { pairs: [{ between: ['r1', 'r2'], widthMm: 0 }] });
    expect(inkedFrom(off.plates[0]!.coverage.data, 60)).toBe(20);
  });

  it('is not made where neighbours share an ink at about the same tint, unless the border has its own width', async () => {
    const sharing = square({
      tints: [
        [0, 0, 0],
        [0, 140, 255],
        [255, 150, 0],
      ],
    });
    const { plates, traps } = await trapped(sharing);
    expect(inkedFrom(plates[0]!.coverage.data, 60)).toBe(20);
    expect(traps!.map(({ does, reason }) => [does, reason])).toEqual([['none', 'shared-ink']]);
    const own = await trapped(sharing, { pairs: [{ between: ['r1', 'r2'], widthMm: 0.35 }] });
    expect(inkedFrom(own.plates[0]!.coverage.data, 60)).toBe(28);
    expect(own.traps![0]!.reason).toBe('set-by-hand');
  });

  it('is not made between tints of one plate', async () => {
    const oneInk = square({
      tints: [
        [0, 0, 0],
        [0, 0, 255],
        [0, 0, 60],
      ],
    });
    const { plates, traps } = await trapped(oneInk);
    expect(plates[2]!.coverage.data[60 * SIDE + 60]).toBe(60);
    expect(traps![0]!.reason).toBe('one-plate');
  });
});

describe('trap under the line', () => {
  /** A line of so many px around the square, its middle on the border. */
  const lined = (px: number) =>
    square({
      line: (x, y) => {
        const off = Math.max(Math.abs(x - 59.5), Math.abs(y - 59.5)) - 20;
        return Math.abs(off) < px / 2 ? 255 : 0;
      },
    });

  it('is not made where the line covers the border by the tolerance on both sides', async () => {
    const { plates } = await trapped(lined(20), { toleranceMm: 0.35 });
    expect(inkedFrom(plates[0]!.coverage.data, 60)).toBe(20);
  });

  it('is made where the line is too thin to hide the drift', async () => {
    const { plates } = await trapped(lined(8), { toleranceMm: 0.35 });
    expect(inkedFrom(plates[0]!.coverage.data, 60)).toBe(28);
  });
});

describe('a white disc of 10 mm in a dark of three inks (case 9)', () => {
  it('holds the supporting inks back by the trap; only the darkest reaches the edge', async () => {
    const side = 320;
    const away = (x: number, y: number) => Math.hypot(x - 159.5, y - 159.5);
    const radius = (5 * PPI) / 25.4;
    const sketch: Sketch = {
      width: side,
      height: side,
      ppi: PPI,
      region: (x, y) => (away(x, y) < radius ? 2 : 1),
      tints: [
        [0, 0, 0],
        [255, 255, 255],
        [0, 0, 0],
      ],
      inks: [{}, {}, {}],
    };
    const { plates, traps } = await trapped(sketch, { widthMm: 0.35 });
    const [straw, brick, soot] = plates.map(({ coverage }) => coverage.data);
    const width = (data: Uint8Array) =>
      [...data.subarray(160 * side, 161 * side)].filter((value) => value === 0).length;
    const chord = Array.from({ length: side }, (_, x) => x).filter((x) => away(x, 160) < radius);
    expect(width(soot!)).toBe(chord.length);
    expect([width(straw!) - width(soot!), width(brick!) - width(soot!)]).toEqual([16, 16]);
    expect(traps!.map(({ does, plates: which, reason }) => [does, which, reason])).toEqual([
      ['hold-back', [0, 1], 'held-back'],
    ]);
  });

  it('leaves a light of two inks beside paper alone', async () => {
    const sketch = square({
      tints: [
        [0, 0, 0],
        [255, 128, 0],
        [0, 0, 0],
      ],
    });
    const { plates, traps } = await trapped(sketch);
    expect(inkedFrom(plates[0]!.coverage.data, 60)).toBe(40);
    expect(traps![0]!.reason).toBe('against-paper');
  });
});

describe('the trap kernel', () => {
  it.each([1, 2, 3, 4])(
    'carries coverage over borders exactly as a search over all pixels does (%d)',
    (seed) => {
      const [width, height] = [37, 29];
      const random = randomOf(seed);
      const labels = emptyLabels(width, height);
      const seeds = Array.from({ length: 6 }, () => [random() * width, random() * height] as const);
      for (let i = 0; i < labels.data.length; i++) {
        const away = seeds.map(([x, y]) => Math.hypot((i % width) - x, Math.floor(i / width) - y));
        labels.data[i] = random() < 0.05 ? 0 : 1 + away.indexOf(Math.min(...away));
      }
      const plates = [randomPlane(width, height, seed), randomPlane(width, height, seed + 9)];
      const pairs = [
        [1, 2, 3.2, 1, 0],
        [1, 4, 5, 2, 1],
        [3, 1, 2, 3, 0],
        [5, 2, 7.5, 3, 0],
        [5, 6, 4, 1, 1],
        [6, 4, 1, 3, 0],
      ] as const;
      const starts = new Uint32Array(8);
      for (const [source] of pairs) starts.fill(starts[source + 1]! + 1, source + 1, 8);
      const rules = {
        starts,
        targets: Uint32Array.from(pairs, ([, target]) => target),
        radius: Float64Array.from(pairs, ([, , radius]) => radius),
        plates: Uint16Array.from(pairs, ([, , , bits]) => bits),
        holdsBack: Uint8Array.from(pairs, ([, , , , holds]) => holds),
        reach: 7.5,
      };
      const outs = plates.map((from) => ({ from, out: flatPlane(width, height, 7) }));
      trap({ labels, plates: outs, rules, cover: null }, 0, height);
      expect(outs.map(({ out }) => [...out.data])).toEqual(
        slowTrap(labels, plates, rules).map((data) => [...data]),
      );
    },
  );
});
