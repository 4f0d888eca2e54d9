import { beforeAll, describe, expect, it } from 'vitest';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { demoLine } from '../../bench/pictures.ts';
import { localRegions } from '../../unit/support/local-regions.ts';
import { randomPicture } from '../../unit/support/pictures.ts';
import { cv, openCvStarts } from '../kernels/opencv.ts';

beforeAll(openCvStarts);

/** Labels of paper by OpenCV, numbered by their first pixel. */
function byOpenCv({ width, height, data }: Plane): Uint32Array {
  const paper = Array.from(data, (value) => (value < 128 ? 255 : 0));
  const image = cv.matFromArray(height, width, cv.CV_8UC1, paper);
  const labels = new cv.Mat();
  cv.connectedComponents(image, labels, 4, cv.CV_32S);
  const names = new Map<number, number>([[0, 0]]);
  const found = Uint32Array.from(labels.data32S, (label) => {
    const name = names.get(label) ?? names.size;
    names.set(label, name);
    return name;
  });
  image.delete();
  labels.delete();
  return found;
}

async function expectSame(line: Plane): Promise<void> {
  const { regions } = await localRegions(line, 300, { gapMm: 0, smallestMm2: 0, tuckMm: 0 });
  const wanted = byOpenCv(line);
  expect(regions.labels.data.findIndex((label, i) => label !== wanted[i])).toBe(-1);
  expect(regions.table).toHaveLength(Math.max(...new Set(wanted)));
  expect(regions.walls).toEqual([]);
}

describe('without gap, smallest size and tuck, regions equal cv.connectedComponents of the paper', () => {
  it.each([0.02, 0.3, 0.41, 0.5, 0.7])('on random pictures, %d of them line', async (density) => {
    for (let seed = 0; seed < 3; seed++) await expectSame(randomPicture(211, 160 + seed, density, seed + 70));
  });

  it('on the artichoke packet', async () => {
    await expectSame(await demoLine(150));
  });
});
