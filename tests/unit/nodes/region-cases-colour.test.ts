import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Bench } from '../support/engine.ts';
import { colourPng } from '../support/files.ts';
import { defaultJob } from '../support/jobs.ts';
import { box, circle, PPI, path, stroked } from '../support/shapes.ts';

let bench: Bench;
beforeAll(() => {
  bench = new Bench();
});
afterAll(() => bench.close());

const line = stroked(12, 10, 0.3, box(1, 1, 11, 9), path([1, 1], [11, 9]), circle([3.5, 6.5], 1.2));
const { width, height } = line;
const coverageAt = (x: number, y: number) => line.data[y * width + x]!;

/** Line and regions of a picture of that drawing. */
async function found(name: string, png: Uint8Array) {
  const job = defaultJob({ asset: bench.asset(name, png), ppi: PPI });
  return {
    drawing: await bench.value(job, 'line-drawing.drawing', 'drawing'),
    regions: await bench.value(job, 'closed-regions.regions', 'regions'),
  };
}

describe('the same drawing (case 19)', () => {
  it.each([
    ['in pure yellow', (x: number, y: number) => [255, 255, 255 - coverageAt(x, y), 255]],
    ['in black on transparency', (x: number, y: number) => [0, 0, 0, coverageAt(x, y)]],
    [
      'in black on white',
      (x: number, y: number) =>
        Array(3)
          .fill(255 - coverageAt(x, y))
          .concat(255),
    ],
  ])('%s arrives as full line, with a region for each of its four areas', async (name, pixel) => {
    const { drawing, regions } = await found(`${name}.png`, colourPng(width, height, pixel));
    // soft edges are rounded to whole levels on the way
    const wrong = drawing.line.data.findIndex((value, i) => Math.abs(value - line.data[i]!) > 1);
    expect(wrong).toBe(-1);
    expect(regions.table).toHaveLength(4);
  });
});
