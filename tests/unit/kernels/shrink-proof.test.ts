import { describe, expect, it } from 'vitest';
import { type ShrinkProofArgs, shrinkProof } from '../../../workers/kernels/shrink-proof.ts';
import { sharedBytes } from '../support/pictures.ts';

/** Screen bytes that are light in equal steps, to check by eye. */
const light = Float64Array.from({ length: 256 }, (_, v) => v / 255);
const encoding = Uint8Array.from({ length: 256 }, (_, v) => v);

/** Greys, one row a list, brought to a size. */
function shrunk(
  rows: number[][],
  toWidth: number,
  toHeight: number,
  ground: ShrinkProofArgs['ground'] = null,
) {
  const [height, width] = [rows.length, rows[0]!.length];
  const from = sharedBytes(width * height * 3);
  rows.flat().forEach((grey, i) => {
    from.fill(grey, i * 3, i * 3 + 3);
  });
  const to = sharedBytes(toWidth * toHeight * (ground ? 4 : 3));
  shrinkProof({ from, width, height, to, toWidth, toHeight, light, encoding, ground }, 0, toHeight);
  return [...to];
}

const greys = (pixels: number[]) => pixels.filter((_, i) => i % 3 === 0);

describe('a picture made smaller', () => {
  it('is the mean of each box', () => {
    const rows = [
      [0, 100, 200, 200],
      [100, 200, 40, 40],
    ];
    expect(greys(shrunk(rows, 2, 1))).toEqual([100, 120]);
  });

  it('counts a pixel that an edge cuts by its share', () => {
    expect(greys(shrunk([[0, 90, 240]], 2, 1))).toEqual([30, 190]);
  });

  it('is itself at its own size', () => {
    expect(greys(shrunk([[3, 250]], 2, 1))).toEqual([3, 250]);
  });

  it('is clear where it is the ground, and solid where nothing of it shows', () => {
    expect(shrunk([[200, 0]], 2, 1, [200, 200, 200])).toEqual([0, 0, 0, 0, 0, 0, 0, 255]);
  });

  it('takes the ground out of a tint; the colour makes up for the rounding of alpha', () => {
    expect(shrunk([[100]], 1, 1, [200, 200, 200])).toEqual([1, 1, 1, 128]);
  });
});
