import { describe, expect, it } from 'vitest';
import { fitRough } from '../../../workers/kernels/fit-rough.ts';
import type { LabelPlane } from '../../../workers/kernels/plane.ts';
import { type Fit, roughPlace, sameShape, UNMOVED } from '../../../workers/kernels/rough-place.ts';
import type { RoughPicture } from '../../../workers/kernels/shrink-rough.ts';
import { emptyLabels, sharedBytes } from '../support/pictures.ts';
import { randomOf } from '../support/random.ts';

const WIDTH = 400;
const HEIGHT = 500;
const SITES = Array.from({ length: 40 }, (_, i) => {
  const random = randomOf(i + 11);
  return [random() * WIDTH, random() * HEIGHT, Math.floor(random() * 0xffffff)] as const;
});

/** The nearest of forty sites: regions like panes. */
function paneAt(x: number, y: number): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  SITES.forEach(([sx, sy], i) => {
    const d2 = (x - sx) ** 2 + (y - sy) ** 2;
    if (d2 >= least) return;
    best = i;
    least = d2;
  });
  return best;
}

const PANES = (() => {
  const labels = emptyLabels(WIDTH, HEIGHT);
  labels.data.forEach((_, i) => {
    labels.data[i] = 1 + paneAt(i % WIDTH, Math.floor(i / WIDTH));
  });
  return labels;
})();

function roughOf(width: number, height: number, colour: (x: number, y: number) => number): RoughPicture {
  const rgba = sharedBytes(width * height * 4);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const value = colour(x, y);
      rgba.set([value >> 16, (value >> 8) & 255, value & 255, 255], (y * width + x) * 4);
    }
  return { width, height, rgba };
}

/** A rough that must be laid on by `fit` to lie right; white where the drawing is not. */
function roughFor(fit: Fit, width: number, height: number): RoughPicture {
  const stretched = sameShape(PANES, { width, height });
  const { xx, xy, x0, yx, yy, y0 } = roughPlace(PANES, { width, height }, fit, stretched);
  const whole = xx * yy - xy * yx;
  return roughOf(width, height, (column, row) => {
    const [u, v] = [column + 0.5 - x0, row + 0.5 - y0];
    const x = (yy * u - xy * v) / whole;
    const y = (xx * v - yx * u) / whole;
    if (x < 0 || y < 0 || x >= WIDTH || y >= HEIGHT) return 0xffffff;
    return SITES[paneAt(x, y)]![2];
  });
}

const find = ({ data, width, height }: LabelPlane, rough: RoughPicture) =>
  fitRough({ labels: data, width, height, rough, alike: sameShape({ width, height }, rough) });

/** How far corners of the drawing are apart under two fits, in shares of its longer side. */
function apart(one: Fit, other: Fit): number {
  const places = [one, other].map((fit) => roughPlace(PANES, PANES, fit, true));
  const [a, b] = [places[0]!, places[1]!];
  const corners = [0, WIDTH].flatMap((x) => [0, HEIGHT].map((y) => [x, y] as const));
  const distances = corners.map(([x, y]) =>
    Math.hypot(
      (a.xx - b.xx) * x + (a.xy - b.xy) * y + a.x0 - b.x0,
      (a.yx - b.yx) * x + (a.yy - b.yy) * y + a.y0 - b.y0,
    ),
  );
  return Math.max(...distances) / HEIGHT;
}

describe('the place of a rough', () => {
  it.each([
    ['as it lies', UNMOVED, 400, 500],
    ['at half the size', UNMOVED, 200, 250],
    ['moved by 3 %, turned by 2 degrees', { scale: 1, shiftX: 0.03, shiftY: -0.03, turn: 2 }, 400, 500],
    ['moved by 18 %', { scale: 1, shiftX: -0.18, shiftY: 0.1, turn: 0 }, 400, 500],
    ['with margins all round', { scale: 1.3, shiftX: 0, shiftY: 0, turn: 0 }, 520, 650],
    ['cut off', { scale: 0.8, shiftX: 0.05, shiftY: 0.05, turn: -4 }, 300, 375],
    ['on a square with margins', { scale: 1.25, shiftX: 0.02, shiftY: 0, turn: 1 }, 500, 500],
    ['on a wide sheet', { scale: 1.05, shiftX: -0.1, shiftY: 0, turn: 0 }, 800, 500],
  ] as const)('is found %s', (_, fit, width, height) => {
    const found = find(PANES, roughFor(fit, width, height))!;
    expect(apart(found.fit, fit)).toBeLessThan(0.005);
    expect(found.explained).toBeGreaterThan(0.9);
    expect(found.sharpness).toBeLessThan(0.2);
  });

  it('is left as it is where that is right, to the last bit', () => {
    expect(find(PANES, roughFor(UNMOVED, 400, 500))!.fit).toEqual(UNMOVED);
  });

  it.each([
    [
      'a gradient',
      (x: number, y: number) => (Math.floor((x * 255) / 400) << 16) | Math.floor((y * 255) / 500),
    ],
    ['checks', (x: number, y: number) => (((x >> 5) + (y >> 5)) % 2 === 0 ? 0xc02020 : 0x2020c0)],
    ['the rough upside down', (x: number, y: number) => SITES[paneAt(WIDTH - x, HEIGHT - y)]![2]],
  ])('does not matter for %s', (_, colour) => {
    expect(find(PANES, roughOf(400, 500, colour))!.sharpness).toBeGreaterThan(0.45);
  });

  it('is not looked for with one colour, or one region, or none large enough', () => {
    expect(
      find(
        PANES,
        roughOf(400, 500, () => 0x777777),
      ),
    ).toBeNull();
    const one = emptyLabels(WIDTH, HEIGHT);
    one.data.fill(1);
    expect(find(one, roughFor(UNMOVED, 400, 500))).toBeNull();
    const hatching = emptyLabels(WIDTH, HEIGHT);
    hatching.data.forEach((_, i) => {
      hatching.data[i] = 1 + (i >> 1);
    });
    expect(find(hatching, roughFor(UNMOVED, 400, 500))).toBeNull();
    expect(
      find(
        emptyLabels(1, 1),
        roughOf(1, 1, () => 0),
      ),
    ).toBeNull();
  });
});

describe('laying a rough on a drawing', () => {
  const drawing = { width: 100, height: 50 };
  const through = (fit: Fit, rough: { width: number; height: number }, stretched: boolean) => {
    const { xx, xy, x0, yx, yy, y0 } = roughPlace(drawing, rough, fit, stretched);
    return (x: number, y: number) => [
      xx * (x - 0.5) + xy * (y - 0.5) + x0,
      yx * (x - 0.5) + yy * (y - 0.5) + y0,
    ];
  };

  it('puts edge on edge when it is stretched', () => {
    const at = through(UNMOVED, { width: 300, height: 400 }, true);
    expect([at(0, 0), at(100, 50)]).toEqual([
      [0, 0],
      [300, 400],
    ]);
  });

  it('covers the drawing, middle on middle, when it is not', () => {
    const at = through(UNMOVED, { width: 300, height: 400 }, false);
    expect([at(0, 0), at(100, 50)]).toEqual([
      [0, 125],
      [300, 275],
    ]);
  });

  it('moves to the right and down by shares of the longer side, larger about the middle', () => {
    const at = through({ scale: 2, shiftX: 0.1, shiftY: 0.05, turn: 0 }, drawing, true);
    expect(at(60, 30)).toEqual([50, 25]);
    expect(at(80, 30)).toEqual([60, 25]);
  });

  it.each([
    [90, [50, 15]],
    [180, [40, 25]],
    [-90, [50, 35]],
    [-180, [40, 25]],
  ] as const)('turns clockwise by %d degrees', (turn, [x, y]) => {
    const found = through({ ...UNMOVED, turn }, drawing, true)(60, 25);
    expect(found[0]).toBeCloseTo(x, 9);
    expect(found[1]).toBeCloseTo(y, 9);
  });
});
