import { beforeAll, describe, expect, it } from 'vitest';
import { registerOffset } from '../../../src/nodes/register-offset.ts';
import { offset } from '../../../workers/kernels/offset.ts';
import { shiftOf, sourcePlace } from '../../../workers/nodes/register-offset.ts';
import { drawnPlane, flatPlane } from '../../unit/support/pictures.ts';
import { cv, openCvStarts } from './opencv.ts';

beforeAll(openCvStarts);

const [WIDTH, HEIGHT, PPI] = [320, 240, 254];
const EXTENT = { ppi: PPI, mm: [WIDTH / 10, HEIGHT / 10] as const };
/** Soft rings: warpAffine places by 1/32 px, a kernel of ours by 1/256. */
const PLATE = drawnPlane(WIDTH, HEIGHT, (x, y) =>
  Math.round(127 + 120 * Math.sin(Math.hypot(x - 150, y - 100) / 14)),
);

describe('a moved plate is what cv.warpAffine makes of it, within one level', () => {
  it.each([
    ['middle', { alongMm: 0.37, acrossMm: -0.81 }],
    ['middle', { rotationDeg: 1.3 }],
    ['lay-edge', { rotationDeg: -0.47, alongMm: 0.2 }],
    ['lay-edge', { rotationDeg: 3, acrossMm: 0.55, stretchMm: 0.4 }],
  ] as const)('about the %s: %j', (turnsAbout, by) => {
    const shift = { alongMm: 0, acrossMm: 0, rotationDeg: 0, stretchMm: 0, ...by };
    for (const feedEdge of ['top', 'right', 'bottom', 'left'] as const) {
      const place = sourcePlace(shift, { feedEdge, turnsAbout }, EXTENT);
      const out = flatPlane(WIDTH, HEIGHT);
      offset({ plate: PLATE, out, place }, 0, HEIGHT);
      const { xx, xy, x0, yx, yy, y0 } = place;
      const source = cv.matFromArray(HEIGHT, WIDTH, cv.CV_8UC1, [...PLATE.data]);
      const matrix = cv.matFromArray(2, 3, cv.CV_64F, [xx, xy, x0, yx, yy, y0]);
      const warped = new cv.Mat();
      const how = cv.INTER_LINEAR | cv.WARP_INVERSE_MAP;
      cv.warpAffine(
        source,
        warped,
        matrix,
        new cv.Size(WIDTH, HEIGHT),
        how,
        cv.BORDER_CONSTANT,
        new cv.Scalar(),
      );
      let worst = 0;
      // Beside the rim, where a soft ring meets paper, a 32nd of a pixel is several levels.
      const inside = (x: number, y: number) => {
        const [u, v] = [xx * x + xy * y + x0, yx * x + yy * y + y0];
        return u > 1 && v > 1 && u < WIDTH - 2 && v < HEIGHT - 2;
      };
      for (let y = 0; y < HEIGHT; y++)
        for (let x = 0; x < WIDTH; x++)
          if (inside(x, y))
            worst = Math.max(worst, Math.abs(out.data[y * WIDTH + x]! - warped.data[y * WIDTH + x]!));
      for (const mat of [source, matrix, warped]) mat.delete();
      expect(worst).toBeLessThanOrEqual(1);
    }
  });
});

describe('offsets by chance over a run', () => {
  const settings = registerOffset.settings.parse({
    how: 'both',
    offsets: { brick: { alongMm: 1, rotationDeg: 0.1 } },
    toleranceAlongMm: 0.6,
    toleranceAcrossMm: 0.3,
    toleranceDeg: 0.04,
  });
  const COUNT = 4000;
  const shifts = Array.from({ length: COUNT }, (_, k) =>
    shiftOf({ id: 'brick', order: 2 }, { ...settings, sheet: k + 1 }),
  );

  /** Kolmogorov and Smirnov's greatest distance from an even spread over `least..most`. */
  function fromEven(values: number[], least: number, most: number): number {
    const sorted = [...values].sort((a, b) => a - b);
    return Math.max(
      ...sorted.map((value, i) => Math.abs((value - least) / (most - least) - (i + 0.5) / sorted.length)),
    );
  }

  it('are spread evenly over the tolerance about what is set', () => {
    // 1.63 / sqrt(n): one even sample in a hundred is farther off
    const limit = 1.63 / Math.sqrt(COUNT);
    expect(
      fromEven(
        shifts.map(({ alongMm }) => alongMm),
        0.4,
        1.6,
      ),
    ).toBeLessThan(limit);
    expect(
      fromEven(
        shifts.map(({ acrossMm }) => acrossMm),
        -0.3,
        0.3,
      ),
    ).toBeLessThan(limit);
    expect(
      fromEven(
        shifts.map(({ rotationDeg }) => rotationDeg),
        0.06,
        0.14,
      ),
    ).toBeLessThan(limit);
  });

  it('have nothing to do with one another, nor with those of the sheet before', () => {
    const along = shifts.map(({ alongMm }) => (alongMm - 1) / 0.6);
    const across = shifts.map(({ acrossMm }) => acrossMm / 0.3);
    const product = (a: number[], b: number[]) => (3 * a.reduce((sum, v, i) => sum + v * b[i]!, 0)) / COUNT;
    expect(Math.abs(product(along, across))).toBeLessThan(4 / Math.sqrt(COUNT));
    expect(Math.abs(product(along.slice(1), [...along.slice(0, -1), 0]))).toBeLessThan(4 / Math.sqrt(COUNT));
  });
});
