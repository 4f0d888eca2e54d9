import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newJob } from '../../../src/graph/default-graph.ts';
import { type Client, startEngine } from '../../../workers/client.ts';
import type { RegionsFound } from '../../../workers/tasks/regions.ts';
import { linePng, readPng } from '../support/files.ts';
import { defaultJob, withSettings } from '../support/jobs.ts';
import { drawnPlane } from '../support/pictures.ts';

const SIDE = 1201;

describe('a grid of 300 x 300 cells (case 5)', () => {
  let client: Client;
  let regions: RegionsFound;

  beforeAll(async () => {
    client = await startEngine({ workers: 2 });
    const grid = drawnPlane(SIDE, SIDE, (x, y) => (x % 4 === 0 || y % 4 === 0 ? 255 : 0));
    const asset = await client.addAsset({ name: 'grid.png', bytes: linePng(grid) });
    const { graph } = withSettings(defaultJob({ asset, ppi: 600 }), {
      'closed-regions': { gapMm: 0, smallestMm2: 0 },
    });
    regions = await client.run('regions', { job: newJob('Grid', graph, {}) });
  });
  afterAll(() => client.close());

  it('has 90,000 regions, more than two bytes can count', () => {
    expect(regions.found.regions).toHaveLength(90_000);
    expect(regions.register.regions).toHaveLength(90_000);
  });

  it('gives each an id of its own', () => {
    expect(new Set(regions.found.regions.map(({ id }) => id)).size).toBe(90_000);
  });

  it('gives each the area of its cell', () => {
    expect(new Set(regions.found.regions.map(({ areaMm2 }) => areaMm2))).toEqual(new Set([0.016]));
  });

  it('gives each four neighbours that share more than a pixel, three at the edge, two in a corner', () => {
    const counts = new Map<number, number>();
    for (const { neighbours } of regions.found.regions) {
      const sides = neighbours.filter(({ sharedMm }) => sharedMm > 25.4 / 600).length;
      counts.set(sides, (counts.get(sides) ?? 0) + 1);
    }
    expect([...counts].sort()).toEqual([
      [2, 4],
      [3, 4 * 298],
      [4, 298 * 298],
    ]);
  });

  it('covers the whole label map: every pixel has a region, every region its pixels', () => {
    const { width, height, data } = readPng(regions.files.find(({ name }) => name === 'labels.png')!.bytes);
    expect([width, height]).toEqual([SIDE, SIDE]);
    const pixels = new Uint32Array(90_001);
    for (let i = 0; i < SIDE * SIDE; i++)
      pixels[data[i * 4]! + 256 * data[i * 4 + 1]! + 65_536 * data[i * 4 + 2]!]!++;
    expect(pixels[0]).toBe(0);
    expect(pixels.findIndex((count, label) => label > 0 && count < 9)).toBe(-1);
  });

  it('holds at each anchor the label of its region', () => {
    const { data } = readPng(regions.files[0]!.bytes);
    const wrong = regions.found.regions.filter(({ label, anchorMm: [x, y] }) => {
      const i = Math.floor((y * 600) / 25.4) * SIDE + Math.floor((x * 600) / 25.4);
      return data[i * 4]! + 256 * data[i * 4 + 1]! + 65_536 * data[i * 4 + 2]! !== label;
    });
    expect(wrong).toEqual([]);
  });
});
