import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { components } from '../../../workers/kernels/components.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { Bench } from '../../unit/support/engine.ts';
import { defaultJob } from '../../unit/support/jobs.ts';
import { drawnPlane, randomPicture } from '../../unit/support/pictures.ts';
import { cv, openCvStarts } from './opencv.ts';

let artichoke: Plane;
const bench = new Bench();

beforeAll(async () => {
  await openCvStarts();
  const svg = readFileSync(new URL('../../../graphs-demo/assets/artichoke-packet.svg', import.meta.url));
  const asset = bench.asset('artichoke-packet.svg', new Uint8Array(svg));
  artichoke = (await bench.value(defaultJob({ asset, ppi: 200 }), 'line-drawing.drawing', 'drawing')).line;
});

afterAll(() => bench.close());

/** Labels of the pixels that are not 0, by OpenCV. */
function byOpenCv({ width, height, data }: Plane, neighbours: 4 | 8): { count: number; labels: Int32Array } {
  const image = cv.matFromArray(height, width, cv.CV_8UC1, [...data]);
  const labels = new cv.Mat();
  const withBackground = cv.connectedComponents(image, labels, neighbours, cv.CV_32S);
  const result = { count: withBackground - 1, labels: Int32Array.from(labels.data32S) };
  image.delete();
  labels.delete();
  return result;
}

/** The same labels, numbered by their first pixel, row by row. */
function renumbered(labels: Int32Array): Uint32Array {
  const names = new Map<number, number>([[0, 0]]);
  return Uint32Array.from(labels, (label) => {
    const name = names.get(label) ?? names.size;
    names.set(label, name);
    return name;
  });
}

function expectSame(plane: Plane, neighbours: 4 | 8): void {
  const { width, height, data } = plane;
  const labels = new Uint32Array(data.length);
  const count = components({ data, width, height, from: 1, to: 255, neighbours, labels });
  const outside = byOpenCv(plane, neighbours);
  expect(count).toBe(outside.count);
  const wanted = renumbered(outside.labels);
  expect(labels.findIndex((label, i) => label !== wanted[i])).toBe(-1);
}

describe.each([4, 8] as const)('components over %d neighbours equal cv.connectedComponents', (neighbours) => {
  it.each([0.02, 0.2, 0.4, 0.5, 0.59, 0.7, 0.95])('on random pictures, %d of them marked', (density) => {
    for (let seed = 0; seed < 4; seed++)
      expectSame(randomPicture(203, 151 + seed, density, seed), neighbours);
  });

  it('on a picture that is all marked, and on one that is not at all', () => {
    expectSame(randomPicture(70, 50, 1, 1), neighbours);
    expectSame(randomPicture(70, 50, 0, 1), neighbours);
  });

  it('on the line and on the paper of the artichoke packet', () => {
    const { width, height, data } = artichoke;
    expect(width * height).toBeGreaterThan(1_000_000);
    expectSame(artichoke, neighbours);
    expectSame(
      drawnPlane(width, height, (x, y) => (data[y * width + x]! < 128 ? 255 : 0)),
      neighbours,
    );
  });
});
