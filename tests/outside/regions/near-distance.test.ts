import { beforeAll, describe, expect, it } from 'vitest';
import { columnDistance } from '../../../workers/kernels/distance.ts';
import { BEYOND, DEEP, NEAR, nearDistance, ON_LINE } from '../../../workers/kernels/near-distance.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { drawnPlane, flatPlane, randomPicture } from '../../unit/support/pictures.ts';
import { cv, openCvStarts } from '../kernels/opencv.ts';

beforeAll(openCvStarts);

interface Distances {
  distance2: Uint16Array;
  zones: Uint8Array;
}

const BEYOND_LIMIT = 0xffff;

function ours({ width, height, data }: Plane, near2: number, limit2: number): Distances {
  const columns = new Uint16Array(width * height);
  const limit = Math.ceil(Math.sqrt(limit2));
  columnDistance(
    { data, width, height, lowest: 128, highest: 255, limit, framed: true, out: columns },
    0,
    width,
  );
  const distance2 = new Uint16Array(width * height);
  const zones = new Uint8Array(width * height);
  nearDistance({ columns, width, near2, limit2, distance2, zones }, 0, height);
  return { distance2, zones };
}

/** What the search for necks should be told, from squared distances that are known everywhere. */
function told(distances2: readonly number[], near2: number, limit2: number): Distances {
  const zoneOf = (d2: number) => (d2 === 0 ? ON_LINE : d2 <= near2 ? NEAR : d2 <= limit2 ? DEEP : BEYOND);
  return {
    distance2: Uint16Array.from(distances2, (d2) => (d2 > limit2 ? BEYOND_LIMIT : d2)),
    zones: Uint8Array.from(distances2, zoneOf),
  };
}

/** Squared distances to line and to a frame of line around the picture, by OpenCV's precise transform. */
function byOpenCv({ width, height, data }: Plane): number[] {
  const framed = drawnPlane(width + 2, height + 2, (x, y) => {
    const inside = x > 0 && y > 0 && x <= width && y <= height;
    return inside && data[(y - 1) * width + x - 1]! < 128 ? 255 : 0;
  });
  const image = cv.matFromArray(height + 2, width + 2, cv.CV_8UC1, [...framed.data]);
  const distance = new cv.Mat();
  cv.distanceTransform(image, distance, cv.DIST_L2, cv.DIST_MASK_PRECISE);
  const found = Array.from(distance.data32F);
  image.delete();
  distance.delete();
  return Array.from(data, (_, i) => {
    const d = found[(Math.floor(i / width) + 1) * (width + 2) + (i % width) + 1]!;
    return Math.round(d * d);
  });
}

/** The same, by looking at every line pixel. */
function byLooking({ width, height, data }: Plane): number[] {
  const lines: [number, number][] = [];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) if (data[y * width + x]! >= 128) lines.push([x, y]);
  return Array.from(data, (_, i) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    const toFrame = Math.min(x + 1, y + 1, width - x, height - y);
    if (data[i]! >= 128) return 0;
    return Math.min(toFrame * toFrame, ...lines.map(([u, v]) => (u - x) ** 2 + (v - y) ** 2));
  });
}

const LIMITS = [
  [1, 3],
  [6.25, 18],
  [41, 114],
  [900, 2501],
] as const;

describe.each(LIMITS)(
  'near distances, half a gap of the root of %d and a limit of the root of %d px',
  (near2, limit2) => {
    it.each([0.0003, 0.003, 0.03, 0.2, 0.7])(
      'equal cv.distanceTransform on random pictures, %d of them line',
      (density) => {
        for (let seed = 0; seed < 3; seed++) {
          const plane = randomPicture(263, 171 + seed, density, seed + 40);
          expect(ours(plane, near2, limit2)).toEqual(told(byOpenCv(plane), near2, limit2));
        }
      },
    );

    it('equal cv.distanceTransform where only the frame is near, and on a disc', () => {
      const disc = drawnPlane(220, 200, (x, y) => (Math.hypot(x - 80, y - 90) < 40 ? 255 : 0));
      for (const plane of [flatPlane(230, 180), disc])
        expect(ours(plane, near2, limit2)).toEqual(told(byOpenCv(plane), near2, limit2));
    });

    it('equal what looking at every line pixel gives, in small pictures of any shape', () => {
      for (let seed = 0; seed < 30; seed++) {
        const [width, height] = [1 + ((seed * 7) % 41), 1 + ((seed * 11) % 37)];
        const plane = randomPicture(width, height, [0.01, 0.05, 0.3][seed % 3]!, seed);
        expect(ours(plane, near2, limit2)).toEqual(told(byLooking(plane), near2, limit2));
      }
    });
  },
);
