import { BadInput } from '../../src/graph/complaint.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { RoughPicture } from '../kernels/shrink-rough.ts';

/** No sound picture takes longer to open than this. */
const LIMIT_MS = 60_000;
/** Longest side a rough is looked at with, px: colours of regions need no more. */
const LONGEST = 2400;
/** An SVG is drawn so wide, px, whatever size it says. */
const VECTOR = { widthMm: 1600, vectorPpi: 25.4 } as const;

/** A rough, no larger than needed, and the name it came by. @throws BadInput when there are no colours to see */
export async function openRough(asset: string, tools: Tools): Promise<{ rough: RoughPicture; name: string }> {
  const { name, bytes } = tools.asset(asset);
  const { head, pixels } = await tools.alone('openPicture', { bytes, name, options: VECTOR }, LIMIT_MS);
  tools.adopt(pixels.buffer);
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
