import { beforeAll, describe, expect, it } from 'vitest';
import { histogram } from '../../../workers/kernels/histogram.ts';
import { otsu } from '../../../workers/kernels/otsu.ts';
import { randomOf } from '../../unit/support/random.ts';
import { cv, openCvStarts } from './opencv.ts';

beforeAll(openCvStarts);

function byOpenCv(values: Uint8Array): number {
  const image = cv.matFromArray(1, values.length, cv.CV_8UC1, [...values]);
  const out = new cv.Mat();
  const level = cv.threshold(image, out, 0, 255, cv.THRESH_BINARY + cv.THRESH_OTSU);
  image.delete();
  out.delete();
  return level;
}

const ours = (values: Uint8Array) => otsu(histogram({ data: values }));

/** About normal: the sum of 12 even draws. */
function draw(random: () => number, middle: number, spread: number): number {
  let sum = -6;
  for (let k = 0; k < 12; k++) sum += random();
  return Math.min(255, Math.max(0, Math.round(middle + sum * spread)));
}

/** Pixels of a scan as coverage: much paper, some line, soft edges between. */
function scan(seed: number): Uint8Array {
  const random = randomOf(seed);
  const paper = 10 + 60 * random();
  const line = 150 + 90 * random();
  const share = 0.02 + 0.3 * random();
  return Uint8Array.from({ length: 20_000 }, () => {
    if (random() < 0.05) return Math.round(paper + (line - paper) * random());
    return random() < share ? draw(random, line, 12) : draw(random, paper, 8);
  });
}

describe("Otsu's level equals cv.threshold with THRESH_OTSU", () => {
  it('on random histograms', () => {
    for (let seed = 0; seed < 40; seed++) {
      const random = randomOf(seed);
      const weights = Array.from({ length: 256 }, () => random() ** 6);
      const values = weights.flatMap((weight, v) => new Array<number>(Math.round(weight * 200)).fill(v));
      expect(ours(Uint8Array.from(values))).toBe(byOpenCv(Uint8Array.from(values)));
    }
  });

  it('on histograms like those of scans', () => {
    for (let seed = 0; seed < 25; seed++) expect(ours(scan(seed))).toBe(byOpenCv(scan(seed)));
  });

  it('on even noise', () => {
    const random = randomOf(9);
    const values = Uint8Array.from({ length: 50_000 }, () => Math.floor(random() * 256));
    expect(ours(values)).toBe(byOpenCv(values));
  });

  it('on pixels of one value and on two heaps', () => {
    for (const values of [
      [80, 80, 80],
      [255, 255],
      [0, 255],
      [10, 10, 200, 200],
    ])
      expect(ours(Uint8Array.from(values))).toBe(byOpenCv(Uint8Array.from(values)));
  });
});
