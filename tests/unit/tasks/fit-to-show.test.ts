import { describe, expect, it } from 'vitest';
import { plateToShow, proofToShow } from '../../../workers/tasks/fit-to-show.ts';
import { platesOf } from '../support/grained.ts';
import { localTools } from '../support/local-tools.ts';
import { flatPlane, sharedBytes } from '../support/pictures.ts';

const { tools } = localTools();

describe('what a screen shows of plates for a device', () => {
  it('is the plate itself while it is no larger than can be shown', async () => {
    const plate = flatPlane(100, 80, 255);
    expect((await plateToShow(platesOf([plate], 600), 'p1', tools))!.coverage).toBe(plate);
    expect(await plateToShow(platesOf([plate], 600), 'p9', tools)).toBeUndefined();
  });

  it('has its dots in box means beyond that, at the same size in mm', async () => {
    const [width, height] = [8000, 4000];
    const plate = flatPlane(width, height);
    for (let i = 0; i < plate.data.length; i += 2) plate.data[i] = 255;
    const shown = (await plateToShow(platesOf([plate], 1200), 'p1', tools))!;
    expect([shown.coverage.width, shown.coverage.height, shown.ppi]).toEqual([4000, 2000, 600]);
    expect(new Set(shown.coverage.data)).toEqual(new Set([128]));
  });

  it('goes for proofs alike', async () => {
    const pixels = sharedBytes(8000 * 4000 * 3).fill(200);
    const proof = { type: 'proof', width: 8000, height: 4000, pixels, ppi: 1200, mm: [1, 1] } as const;
    const shown = await proofToShow(proof, tools);
    expect([shown.width, shown.height, shown.ppi, shown.pixels[5]]).toEqual([4000, 2000, 600, 200]);
  });
});
