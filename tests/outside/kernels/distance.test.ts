import { beforeAll, describe, expect, it } from 'vitest';
import { columnDistance, squaredDistance } from '../../../workers/kernels/distance.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { drawnPlane, flatPlane, randomPicture } from '../../unit/support/pictures.ts';
import { cv, openCvStarts } from './opencv.ts';

beforeAll(openCvStarts);

function ours({ width, height, data }: Plane): Uint32Array {
  const columns = new Uint16Array(width * height);
  const sites = { data, width, height, lowest: 255, highest: 255, limit: 65_534, framed: true };
  columnDistance({ ...sites, out: columns }, 0, width);
  const out = new Uint32Array(width * height);
  squaredDistance({ columns, width, out }, 0, height);
  return out;
}

/** Squared distances to the marks and to a frame of marks around the picture, by OpenCV. */
function byOpenCv({ width, height, data }: Plane): Uint32Array {
  const framed = drawnPlane(width + 2, height + 2, (x, y) => {
    const inside = x > 0 && y > 0 && x <= width && y <= height;
    return inside && data[(y - 1) * width + x - 1] !== 255 ? 255 : 0;
  });
  const image = cv.matFromArray(height + 2, width + 2, cv.CV_8UC1, [...framed.data]);
  const distance = new cv.Mat();
  cv.distanceTransform(image, distance, cv.DIST_L2, cv.DIST_MASK_PRECISE);
  const found = Float32Array.from(distance.data32F);
  image.delete();
  distance.delete();
  return Uint32Array.from(data, (_, i) => {
    const d = found[(Math.floor(i / width) + 1) * (width + 2) + (i % width) + 1]!;
    return Math.round(d * d);
  });
}

describe('squared distances equal cv.distanceTransform, DIST_L2 and precise', () => {
  it.each([0.0005, 0.005, 0.05, 0.3, 0.8])('on random pictures, %d of them marked', (density) => {
    for (let seed = 0; seed < 3; seed++) {
      const plane = randomPicture(257, 190 + seed, density, seed + 20);
      expect(ours(plane)).toEqual(byOpenCv(plane));
    }
  });

  it('where only the frame is near', () => {
    expect(ours(flatPlane(301, 200))).toEqual(byOpenCv(flatPlane(301, 200)));
  });

  it('around one mark, one line and one ring', () => {
    const shapes = [
      (x: number, y: number) => x === 40 && y === 90,
      (x: number, y: number) => x === 2 * y,
      (x: number, y: number) => Math.round(Math.hypot(x - 100, y - 80)) === 60,
    ];
    for (const marked of shapes) {
      const plane = drawnPlane(200, 160, (x, y) => (marked(x, y) ? 255 : 0));
      expect(ours(plane)).toEqual(byOpenCv(plane));
    }
  });
});
