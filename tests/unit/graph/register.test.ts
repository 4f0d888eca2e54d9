import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignIds, type FoundRegion, type RegionRegister } from '../../../src/graph/register.ts';
import { randomOf, shuffled } from '../support/random.ts';

const NOTHING: RegionRegister = { labelMap: null, next: 1, regions: [] };

/** A rectangle that fills its box; its anchor is in the middle. */
function box(left: number, top: number, width: number, height: number): FoundRegion {
  return {
    anchorMm: [left + width / 2, top + height / 2],
    areaMm2: width * height,
    boxMm: [left, top, left + width, top + height],
  };
}

/** A ring: the box is that of a disc, the anchor lies on the ring, at its top. */
function ring(x: number, y: number, outer: number, inner: number): FoundRegion {
  return {
    anchorMm: [x, y - (outer + inner) / 2],
    areaMm2: Math.PI * (outer * outer - inner * inner),
    boxMm: [x - outer, y - outer, x + outer, y + outer],
  };
}

function moved(region: FoundRegion, dx: number, dy: number): FoundRegion {
  const [left, top, right, bottom] = region.boxMm;
  return {
    ...region,
    anchorMm: [region.anchorMm[0] + dx, region.anchorMm[1] + dy],
    boxMm: [left + dx, top + dy, right + dx, bottom + dy],
  };
}

/** Boxes in a grid, 5 mm apart, of slightly different sizes. */
function grid(columns: number, rows: number): FoundRegion[] {
  const random = randomOf(4);
  return Array.from({ length: columns * rows }, (_, i) =>
    box((i % columns) * 5, Math.floor(i / columns) * 5, 3 + random(), 3 + random()),
  );
}

describe('the first run', () => {
  it('numbers regions r1, r2, r3 in the order they come', () => {
    const { ids, register } = assignIds([box(0, 0, 5, 5), box(20, 0, 5, 5), box(0, 20, 5, 5)], NOTHING);
    expect(ids).toEqual(['r1', 'r2', 'r3']);
    expect(register.next).toBe(4);
  });

  it('remembers id, anchor, area and box of each, and keeps the hash of the label map', () => {
    const labelMap = 'f'.repeat(64);
    const { register } = assignIds([box(2, 4, 6, 8)], { ...NOTHING, labelMap });
    expect(register).toEqual({
      labelMap,
      next: 2,
      regions: [{ id: 'r1', anchorMm: [5, 8], areaMm2: 48, boxMm: [2, 4, 8, 12] }],
    });
  });

  it('of nothing remembers nothing', () => {
    expect(assignIds([], NOTHING)).toEqual({ ids: [], register: NOTHING });
  });
});

describe('a later run', () => {
  const first = assignIds(grid(4, 3), NOTHING);

  it('gives the same finds the same ids and remembers the same', () => {
    expect(assignIds(grid(4, 3), first.register)).toEqual(first);
  });

  it('gives the same ids when the finds come in another order', () => {
    const order = shuffled([...first.ids.keys()], 5);
    const finds = grid(4, 3);
    const later = assignIds(
      order.map((i) => finds[i]!),
      first.register,
    );
    expect(later.ids).toEqual(order.map((i) => first.ids[i]));
  });

  it('gives the same ids when the entries were remembered in another order', () => {
    const register = { ...first.register, regions: shuffled(first.register.regions, 6) };
    expect(assignIds(grid(4, 3), register).ids).toEqual(first.ids);
  });

  it('keeps the id of a region that moved a little', () => {
    const finds = grid(4, 3).map((region) => moved(region, 0.4, -0.3));
    expect(assignIds(finds, first.register).ids).toEqual(first.ids);
  });

  it('keeps the id of a region that grew a little', () => {
    const { register } = assignIds([box(0, 0, 10, 10)], NOTHING);
    expect(assignIds([box(0, 0, 11, 10)], register).ids).toEqual(['r1']);
  });

  it('gives a fresh id to a region in another place', () => {
    const { register } = assignIds([box(0, 0, 5, 5)], NOTHING);
    expect(assignIds([box(50, 50, 5, 5)], register).ids).toEqual(['r2']);
  });

  it('gives a fresh id to a region of another size in the same place', () => {
    const { register } = assignIds([box(0, 0, 20, 20)], NOTHING);
    expect(assignIds([box(8, 8, 4, 4)], register).ids).toEqual(['r2']);
  });

  it('never gives the id of a region that is gone to another', () => {
    const both = assignIds([box(0, 0, 5, 5), box(20, 0, 5, 5)], NOTHING);
    const one = assignIds([box(0, 0, 5, 5)], both.register);
    expect(one.ids).toEqual(['r1']);
    const again = assignIds([box(0, 0, 5, 5), box(60, 60, 5, 5)], one.register);
    expect(again.ids).toEqual(['r1', 'r3']);
  });

  it('gives one id to one region only, the surest', () => {
    const { register } = assignIds([box(0, 0, 10, 10)], NOTHING);
    expect(assignIds([box(0, 0, 8, 10), box(0, 0, 10, 9.5)], register).ids).toEqual(['r2', 'r1']);
  });

  it('tells concentric rings apart', () => {
    const rings = [ring(30, 30, 25, 20), ring(30, 30, 19, 14), ring(30, 30, 13, 8), box(23, 23, 14, 14)];
    const { ids, register } = assignIds(rings, NOTHING);
    const later = shuffled(rings, 3).map((region) => moved(region, 0.2, 0.1));
    const expected = shuffled(ids, 3);
    expect(assignIds(later, register).ids).toEqual(expected);
  });

  it('passes over fresh ids that a person gave already', () => {
    const entry = { id: 'r1', ...box(0, 0, 5, 5) };
    expect(assignIds([box(0, 0, 5, 5), box(50, 0, 5, 5)], { ...NOTHING, regions: [entry] }).ids).toEqual([
      'r1',
      'r2',
    ]);
  });

  it('keeps the id of a thin strip that moved by more than half its width, wherever it lies', () => {
    const lefts = Array.from({ length: 40 }, (_, i) => 9 + i / 32);
    const lost = lefts.filter((left) => {
      const strip: FoundRegion = { ...box(left, 2, 20, 0.5), anchorMm: [left + 0.25, 2.25] };
      const { register } = assignIds([strip], NOTHING);
      return assignIds([moved(strip, 0.375, 0)], register).ids[0] !== 'r1';
    });
    expect(lost).toEqual([]);
  });

  it('gives the same ids wherever on the sheet it all lies', () => {
    const one = fc.record({
      width: fc.integer({ min: 1, max: 12 }),
      height: fc.integer({ min: 1, max: 12 }),
      anchorX: fc.double({ min: 0, max: 1, noNaN: true }),
      dx: fc.integer({ min: -3, max: 3 }),
      dy: fc.integer({ min: -3, max: 3 }),
    });
    fc.assert(
      fc.property(one, fc.nat(20), fc.nat(20), ({ width, height, anchorX, dx, dy }, x, y) => {
        const keeps = (left: number, top: number) => {
          const region: FoundRegion = {
            ...box(left, top, width, height),
            anchorMm: [left + Math.round(anchorX * width), top],
          };
          const { register } = assignIds([region], NOTHING);
          return assignIds([moved(region, dx, dy)], register).ids[0] === 'r1';
        };
        expect(keeps(x, y)).toBe(keeps(0, 0));
      }),
    );
  });

  it('gives distinct ids to any finds, whatever it remembers', () => {
    const side = fc.double({ min: 0.1, max: 30, noNaN: true });
    const region = fc.tuple(side, side, side, side).map(([x, y, w, h]) => box(x, y, w, h));
    fc.assert(
      fc.property(fc.array(region), fc.array(region), (before, after) => {
        const { register } = assignIds(before, NOTHING);
        const { ids } = assignIds(after, register);
        expect(new Set(ids).size).toBe(after.length);
      }),
    );
  });
});

describe('90,000 regions of one drawing', () => {
  const cells = Array.from({ length: 90_000 }, (_, i) =>
    box((i % 300) * 0.2, Math.floor(i / 300) * 0.2, 0.15, 0.15),
  );

  it('get distinct ids, and the same ones when found again', () => {
    const first = assignIds(cells, NOTHING);
    expect(new Set(first.ids).size).toBe(90_000);
    const again = assignIds(cells, first.register);
    expect(again.ids).toEqual(first.ids);
  });
});
