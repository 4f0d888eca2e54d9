import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RegionEdit } from '../../../src/graph/region-edits.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

const PPI = 600;
const MM = PPI / 25.4;

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** Distributes an edit that lacks its id over the shapes of edits. */
type Nameless<Edit> = Edit extends RegionEdit ? Omit<Edit, 'id'> : never;

async function regionsOf(line: Plane, edits: Nameless<RegionEdit>[], settings: Settings = {}) {
  const named = edits.map((edit, i) => ({ ...edit, id: `e${i + 1}` }));
  const job = withSettings(defaultJob({ asset: bench.drawing(line), ppi: PPI }), {
    'clean-line': { speckMm2: 0 },
    'closed-regions': { smallestMm2: 0.3, ...settings, edits: named },
  });
  const { value, complaints } = await bench.evaluate(job, 'closed-regions.regions', 'regions');
  const labelAt = (xMm: number, yMm: number) =>
    value.labels.data[Math.floor(yMm * MM) * value.labels.width + Math.floor(xMm * MM)]!;
  return { value, complaints, labelAt };
}

const mmOf = (x: number) => x / MM;

/** Two boxes of 8 x 8 mm side by side, a door of 0.4 mm between them, a dot of 0.5 mm in the right one. */
const [WIDTH, HEIGHT] = [Math.round(20 * MM), Math.round(12 * MM)];
const boxes = drawnPlane(WIDTH, HEIGHT, (px, py) => {
  const [x, y] = [mmOf(px + 0.5), mmOf(py + 0.5)];
  const inside = x > 2 && x < 18 && y > 2 && y < 10;
  if (!inside) return 0;
  const rim = x < 2.3 || x > 17.7 || y < 2.3 || y > 9.7;
  const middle = Math.abs(x - 10) < 0.15 && Math.abs(y - 6) > 0.2;
  const dot = Math.hypot(x - 14, y - 6) < 0.25;
  return rim || middle || dot ? 255 : 0;
});

describe('without hand edits', () => {
  it('the door is a wall and both boxes are regions inside the field', async () => {
    const { value } = await regionsOf(boxes, []);
    expect(value.table.map(({ inside }) => inside)).toEqual([null, 1, 1]);
    expect(value.walls).toHaveLength(1);
    const [wall] = value.walls;
    expect(wall!.between).toEqual([2, 3]);
    expect(Math.abs(wall!.placeMm[0] - 10) * MM).toBeLessThanOrEqual(4);
    expect(Math.abs(wall!.placeMm[1] - 6) * MM).toBeLessThanOrEqual(1);
    expect(Math.abs(wall!.widthMm - 0.4) * MM).toBeLessThanOrEqual(1);
    expect(wall!.opened).toBe(false);
  });
});

describe('a wall that is opened', () => {
  it('makes one region of both sides, and is still shown, as opened', async () => {
    const { value, labelAt, complaints } = await regionsOf(boxes, [{ does: 'open-wall', atMm: [10.2, 6.1] }]);
    expect(value.table).toHaveLength(2);
    expect(labelAt(6, 6)).toBe(labelAt(14, 8));
    expect(value.walls.map(({ opened, between }) => ({ opened, between }))).toEqual([
      { opened: true, between: [2, 2] },
    ]);
    expect(complaints).toEqual([]);
  });

  it('says where it finds no wall, and changes nothing', async () => {
    const { value, complaints } = await regionsOf(boxes, [{ does: 'open-wall', atMm: [5, 5] }]);
    expect(value.table).toHaveLength(3);
    expect(complaints.map(({ code, placeMm }) => ({ code, placeMm }))).toEqual([
      { code: 'edit-no-wall', placeMm: [5, 5] },
    ]);
  });
});

describe('a wall that is drawn', () => {
  it('parts what no line parts, and prints nothing', async () => {
    const { value, labelAt } = await regionsOf(boxes, [
      {
        does: 'draw-wall',
        pathMm: [
          [2.1, 5],
          [10, 5.2],
        ],
      },
    ]);
    expect(value.table).toHaveLength(4);
    expect(labelAt(5, 4)).not.toBe(labelAt(5, 8));
  });

  it.each([0, 1])('leaves no pixel bare along it, at a tuck of %s mm', async (tuckMm) => {
    const path: [number, number][] = [
      [4, 3],
      [8, 9],
    ];
    const { value } = await regionsOf(boxes, [{ does: 'draw-wall', pathMm: path }], { tuckMm });
    const bare = [...value.labels.data.keys()].filter(
      (i) => value.labels.data[i] === 0 && boxes.data[i]! < 128,
    );
    expect(bare).toEqual([]);
  });

  it('closes an opening together with the gap at its ends', async () => {
    const { labelAt } = await regionsOf(
      boxes,
      [
        {
          does: 'draw-wall',
          pathMm: [
            [10, 5.85],
            [10, 6.1],
          ],
        },
      ],
      { gapMm: 0.2 },
    );
    expect(labelAt(6, 6)).not.toBe(labelAt(14, 8));
  });
});

describe('a cut', () => {
  it('parts one region from line to line and no other', async () => {
    const { value, labelAt } = await regionsOf(boxes, [
      {
        does: 'cut',
        pathMm: [
          [5, 4],
          [5, 7],
        ],
      },
    ]);
    expect(value.table).toHaveLength(4);
    expect(labelAt(3, 6)).not.toBe(labelAt(8, 6));
    expect(labelAt(5, 1)).toBe(labelAt(5, 11));
  });

  it('says when it lies on line', async () => {
    const { complaints } = await regionsOf(boxes, [
      {
        does: 'cut',
        pathMm: [
          [4, 2.1],
          [8, 2.1],
        ],
      },
    ]);
    expect(complaints.map(({ code }) => code)).toEqual(['edit-no-region']);
  });
});

describe('a join', () => {
  it('makes one region of two that line parts', async () => {
    const { value, labelAt } = await regionsOf(boxes, [{ does: 'join', fromMm: [6, 6], toMm: [1, 1] }]);
    expect(value.table).toHaveLength(2);
    expect(labelAt(6, 6)).toBe(labelAt(1, 1));
    expect(labelAt(14, 8)).not.toBe(labelAt(1, 1));
  });

  it('says which of its places has no region', async () => {
    const { complaints } = await regionsOf(boxes, [{ does: 'join', fromMm: [6, 6], toMm: [60, 1] }]);
    expect(complaints.map(({ code, placeMm }) => ({ code, placeMm }))).toEqual([
      { code: 'edit-no-region', placeMm: [60, 1] },
    ]);
  });
});

describe('a mark that is ignored', () => {
  it('lets the region run through it, and still prints', async () => {
    const before = await regionsOf(boxes, []);
    const after = await regionsOf(boxes, [{ does: 'ignore-mark', atMm: [14.1, 6.3] }]);
    const dotMm2 = Math.PI * 0.25 ** 2;
    const grown = after.value.table[2]!.areaMm2 - before.value.table[2]!.areaMm2;
    expect(Math.abs(grown / dotMm2 - 1)).toBeLessThan(0.05);
    const [x, y] = after.value.table[2]!.anchorMm;
    expect(Math.hypot(x - 14, y - 6)).toBeLessThan(0.5);
  });

  it('is refused where it is the drawing itself', async () => {
    const line = drawnPlane(WIDTH, HEIGHT, (x, y) => (x > 60 && y > 40 && x < 440 && y < 270 ? 255 : 0));
    const { complaints } = await regionsOf(line, [{ does: 'ignore-mark', atMm: [10, 6] }]);
    expect(complaints.map(({ code }) => code)).toEqual(['edit-large-mark']);
  });
});

describe('a background that the frame cuts in pieces', () => {
  const stem = drawnPlane(WIDTH, HEIGHT, (px) => (Math.abs(mmOf(px) - 10) < 0.3 ? 255 : 0));

  it('is several regions, each touching the frame, or one', async () => {
    const apart = await regionsOf(stem, []);
    expect(apart.value.table.map(({ touchesFrame }) => touchesFrame)).toEqual([true, true]);
    const joined = await regionsOf(stem, [], { frame: 'joins' });
    expect(joined.value.table).toHaveLength(1);
  });
});

describe('solid black', () => {
  const disc = drawnPlane(WIDTH, HEIGHT, (px, py) => {
    const d = Math.hypot(mmOf(px) - 10, mmOf(py) - 6);
    return d < 5 && d > 1 ? 255 : 0;
  });

  it('wider than the tuck stays line, and parts what lies in it from what lies around it', async () => {
    const { value, labelAt } = await regionsOf(disc, [], { tuckMm: 1 });
    expect(value.table).toHaveLength(2);
    expect(labelAt(10, 6)).not.toBe(labelAt(1, 1));
    expect(labelAt(10, 9)).toBe(0);
    expect(value.table[1]!.inside).toBe(1);
    expect(value.table[1]!.neighbours).toEqual([]);
  });
});
