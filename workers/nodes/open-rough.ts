import { BadInput } from '../../src/graph/complaint.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { RoughPicture } from '../kernels/shrink-rough.ts';
import { openAsset } from './open-picture.ts';

/** Longest side a rough is looked at with, px: colours of regions need no more. */
const LONGEST = 2400;
/** An SVG is drawn so wide, px, whatever size it says. */
const VECTOR = { widthMm: 1600, vectorPpi: 25.4 } as const;

/** A rough, no larger than needed, and the name it came by. @throws BadInput when there are no colours to see */
export async function openRough(asset: string, tools: Tools): Promise<{ rough: RoughPicture; name: string }> {
  const { name, head, pixels } = await openAsset(asset, VECTOR, tools);
  const { width, height, bands } = head;
  for (const message of head.notes)
    tools.complain({ code: 'picture-note', severity: 'note', message: `${name}: ${message}` });
  const scale = Math.ceil(Math.max(width, height) / LONGEST);
  const size = { width: Math.ceil(width / scale), height: Math.ceil(height / scale) };
  const rough = { ...size, rgba: tools.bytes(size.width * size.height * 4) };
  await tools.bands('shrinkRough', { pixels, width, height, bands, scale, to: rough }, rough.height);
  tools.free(pixels);
  if (!rough.rgba.some((value, i) => (i & 3) === 3 && value !== 0))
    throw new BadInput(
      `${name}: the rough is transparent all over; check that its colours are not on a hidden layer`,
    );
  return { rough, name };
}
