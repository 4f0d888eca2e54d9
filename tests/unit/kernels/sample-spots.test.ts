import { describe, expect, it } from 'vitest';
import { sampleSpots } from '../../../workers/kernels/sample-spots.ts';

const width = 20;
const height = 10;

/** Red to the left, blue to the right, with one white speck in the red. */
function twoHalves(): Uint8Array {
  const pixels = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) pixels[i * 3 + (i % width < 10 ? 0 : 2)] = 200;
  pixels.set([255, 255, 255], (5 * width + 5) * 3);
  return pixels;
}

describe('colours of spots', () => {
  it('are the middle of each disc, whatever a speck in it', () => {
    const spots = [
      { x: 5, y: 5, radius: 3 },
      { x: 15, y: 5, radius: 3 },
    ];
    expect(sampleSpots({ pixels: twoHalves(), width, height, bands: 3, spots })).toEqual([
      [200, 0, 0],
      [0, 0, 200],
    ]);
  });

  it('leave out what is transparent, and are null where nothing is', () => {
    const pixels = new Uint8Array(width * height * 4).fill(90);
    for (let i = 0; i < width * height; i++) pixels[i * 4 + 3] = i % width < 10 ? 255 : 0;
    const spots = [
      { x: 10, y: 5, radius: 4 },
      { x: 17, y: 5, radius: 2 },
      { x: -30, y: 5, radius: 2 },
    ];
    expect(sampleSpots({ pixels, width, height, bands: 4, spots })).toEqual([[90, 90, 90], null, null]);
  });

  it('read grey as red, green and blue', () => {
    const pixels = new Uint8Array(width * height).fill(33);
    const spots = [{ x: 3, y: 3, radius: 1 }];
    expect(sampleSpots({ pixels, width, height, bands: 1, spots })).toEqual([[33, 33, 33]]);
  });
});
