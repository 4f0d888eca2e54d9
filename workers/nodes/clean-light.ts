import type { SettingsOf } from '../../src/graph/node-kind.ts';
import type { cleanLine } from '../../src/nodes/clean-line.ts';
import type { Cleaning } from '../engine/cleaning.ts';
import type { Tools } from '../engine/evaluation.ts';
import { otsu } from '../kernels/otsu.ts';
import { mmToPx, type Plane } from '../kernels/plane.ts';

/** Side of the blocks that paper is looked for in: wider than the paper between hatching, narrow against shade. */
const BLOCK_MM = 3;
const LEAST_BLOCK_PX = 16;
/** Paper that differs by less is evenly lit. */
const UNEVEN = 0.08;

/**
 * Evens out the light on the sheet: always, never, or where a scan needs it.
 *
 * @param counts histogram of `line`
 * @param clean whether it is clean artwork, which needs none
 */
export async function evened(
  line: Plane,
  counts: Uint32Array,
  clean: boolean,
  wanted: SettingsOf<typeof cleanLine>['light'],
  ppi: number,
  tools: Tools,
): Promise<{ line: Plane; light: Cleaning['light'] }> {
  if (wanted === 'as-is' || (wanted === 'auto' && clean))
    return { line, light: { evened: false, spread: 0 } };
  const { width, height } = line;
  const side = Math.max(LEAST_BLOCK_PX, Math.round(mmToPx(BLOCK_MM, ppi)));
  const [columns, rows] = [Math.ceil(width / side), Math.ceil(height / side)];
  const levels = tools.bytes(columns * rows);
  await tools.bands('paperBlocks', { line, side, levels }, rows);
  const sure = 255 - otsu(counts);
  const { light, spread } = await tools.whole('paperLight', { levels, columns, rows, sure });
  tools.free(levels);
  if (wanted === 'auto' && spread < UNEVEN) return { line, light: { evened: false, spread } };
  const out = tools.plane(width, height);
  await tools.bands('evenLight', { line, out, light, side }, height);
  return { line: out, light: { evened: true, spread } };
}
