import { BadInput } from '../../src/graph/complaint.ts';
import { openAsset } from '../nodes/open-picture.ts';
import type { TaskContext } from './task.ts';

export interface SpotsInput {
  /** Hash of a picture the engine was given. */
  asset: string;
  /** Discs as shares of the picture's width (x, radius) and height (y), 0..1. */
  spots: readonly { x: number; y: number; radius: number }[];
}

const VECTOR_PPI = 150;

/**
 * The colours of spots of a picture: red, green, blue, 0..255, each the middle of its disc.
 *
 * @throws BadInput when the picture cannot be read or a spot lies on nothing
 */
export async function spots(
  { asset, spots: wanted }: SpotsInput,
  { engine, flag }: TaskContext,
): Promise<[number, number, number][]> {
  const { tools, tidy } = engine.toolBox(flag);
  try {
    const { name, head, pixels } = await openAsset(asset, { vectorPpi: VECTOR_PPI }, tools);
    const { width, height, bands } = head;
    const discs = wanted.map(({ x, y, radius }) => ({
      x: x * width,
      y: y * height,
      radius: Math.max(1, radius * width),
    }));
    const found = await tools.whole('sampleSpots', { pixels, width, height, bands, spots: discs });
    return found.map((colour) => {
      if (!colour)
        throw new BadInput(`${name}: there is no picture where you pointed; point at print or paper`);
      return colour;
    });
  } finally {
    tidy();
  }
}
