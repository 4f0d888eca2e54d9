import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/job.ts';
import { Bench } from '../support/engine.ts';
import { defaultJob, type Settings, withBypassed, withRecipes, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

/** 10 px to a millimetre; the sheet is 20 x 10 mm. */
const PPI = 254;
const WIDTH = 200;
const HEIGHT = 100;

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

/** A line down the middle: a region to the left and one to the right. */
const LINE = drawnPlane(WIDTH, HEIGHT, (x) => (Math.abs(x - 100) < 3 ? 255 : 0));
const SQUARE = {
  id: 's',
  pathMm: [
    [2, 2],
    [6, 2],
    [6, 6],
    [2, 6],
  ],
};

function jobOf(settings: Settings): Job {
  const job = defaultJob({ asset: bench.drawing(LINE), ppi: PPI });
  const node = { id: 'area', kind: 'area', settings, bypassed: false };
  const wire = (from: [string, string], to: [string, string]) => ({
    from: { node: from[0], port: from[1] },
    to: { node: to[0], port: to[1] },
  });
  const graph = {
    nodes: [...job.graph.nodes, node],
    wires: [
      ...job.graph.wires,
      wire(['clean-line', 'drawing'], ['area', 'drawing']),
      wire(['closed-regions', 'regions'], ['area', 'regions']),
      wire(['area', 'area'], ['key-line', 'area']),
    ],
  };
  return { ...job, graph };
}

const maskOf = async (settings: Settings, scale = 1) =>
  (await bench.value(jobOf(settings), 'area.area', 'area', scale)).mask;
const at = (mask: { width: number; data: Uint8Array }, x: number, y: number) => mask.data[y * mask.width + x];
const share = (mask: { data: Uint8Array }) =>
  mask.data.reduce((sum, value) => sum + value, 0) / (255 * mask.data.length);

describe('an area', () => {
  it('is what was drawn, to the pixel', async () => {
    const mask = await maskOf({ shapes: [SQUARE] });
    expect(share(mask)).toBeCloseTo(16 / 200, 6);
    expect([at(mask, 20, 20), at(mask, 59, 59), at(mask, 19, 30), at(mask, 60, 30)]).toEqual([
      255, 255, 0, 0,
    ]);
  });

  it('is all but that on request', async () => {
    expect(share(await maskOf({ shapes: [SQUARE], invert: true }))).toBeCloseTo(184 / 200, 6);
  });

  it('grows and narrows by millimetres', async () => {
    const wider = await maskOf({ shapes: [SQUARE], growMm: 1 });
    expect([at(wider, 11, 40), at(wider, 8, 40)]).toEqual([255, 0]);
    expect(share(await maskOf({ shapes: [SQUARE], growMm: -1 }))).toBeCloseTo(4 / 200, 6);
  });

  it('fades out over the feather, half way at its outline', async () => {
    const mask = await maskOf({ shapes: [SQUARE], featherMm: 2 });
    expect(at(mask, 30, 40)).toBe(255);
    expect(at(mask, 9, 40)).toBe(0);
    expect(Math.abs(at(mask, 20, 40)! + at(mask, 19, 40)! - 255)).toBeLessThanOrEqual(1);
    for (let x = 10; x < 30; x++) expect(at(mask, x + 1, 40)!).toBeGreaterThanOrEqual(at(mask, x, 40)!);
  });

  it('is whole regions, under the line to its middle', async () => {
    const { ids } = await bench.value(jobOf({}), 'closed-regions.regions', 'regions');
    const mask = await maskOf({ regions: [ids[0]] });
    expect([at(mask, 0, 0), at(mask, 98, 50), at(mask, 103, 50), at(mask, 199, 99)]).toEqual([
      255, 255, 0, 0,
    ]);
  });

  it('is the line near a place, and no paper', async () => {
    const mask = await maskOf({
      lines: [
        {
          id: 'l',
          pathMm: [
            [9, 3],
            [11, 3],
          ],
          withinMm: 1,
        },
      ],
    });
    expect([at(mask, 100, 30), at(mask, 100, 50), at(mask, 90, 30)]).toEqual([255, 0, 0]);
  });

  it('is the same in small', async () => {
    const full = await maskOf({ shapes: [SQUARE], growMm: 0.5, featherMm: 1 });
    const small = await maskOf({ shapes: [SQUARE], growMm: 0.5, featherMm: 1 }, 4);
    expect(Math.abs(share(small) - share(full))).toBeLessThan(0.004);
  });

  it('keeps another step to itself: the line prints there and nowhere else', async () => {
    const job = withRecipes(
      withBypassed(jobOf({ shapes: [SQUARE], growMm: 20, regions: [] }), 'plate-grain'),
      {},
    );
    const upper = withSettings(job, {
      area: {
        shapes: [
          {
            id: 's',
            pathMm: [
              [0, 0],
              [20, 0],
              [20, 5],
              [0, 5],
            ],
          },
        ],
        growMm: 0,
      },
    });
    const { plates } = await bench.value(upper, 'key-line.plates', 'plates');
    const { data } = plates[0]!.coverage;
    expect([data[20 * WIDTH + 100], data[80 * WIDTH + 100]]).toEqual([255, 0]);
  });

  it('asks for a wire where it has no size', async () => {
    const job = jobOf({});
    const wires = job.graph.wires.filter(({ to }) => to.node !== 'area');
    const bare = { ...job, graph: { ...job.graph, wires } };
    await expect(bench.value(bare, 'area.area', 'area')).rejects.toThrow(/wire one, so that it has a size/);
  });
});
