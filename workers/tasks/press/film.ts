import type { Tools } from '../../engine/evaluation.ts';
import type { PlatesValue } from '../../engine/values.ts';
import type { Plane } from '../../kernels/plane.ts';
import { type LaidOut, onSheet } from './laid-out.ts';

/** One plate as film on its sheet: 0 black .. 255 clear. Taken from the tools. */
export async function filmOf(
  plates: PlatesValue,
  at: number,
  laid: LaidOut,
  oneBit: boolean,
  tools: Tools,
): Promise<Plane> {
  const plane = await onSheet(plates.plates[at]!, at, laid, tools);
  const grey = tools.plane(plane.width, plane.height);
  const { emulsion, mirrored, negative } = laid.settings;
  const turned = (emulsion === 'down') !== mirrored;
  await tools.bands('filmSide', { plane, grey, mirrored: turned, negative, oneBit }, plane.height);
  tools.free(plane.data);
  return grey;
}
