import type { Follow, SureMatch } from '../../src/graph/follow.ts';
import type { Case } from '../../src/graph/redraw.ts';
import type { Tools } from '../engine/evaluation.ts';
import type { RegionsValue } from '../engine/values.ts';
import { inspectPicture } from '../files/inspect.ts';
import { mmToPx } from '../kernels/plane.ts';

/** A region that is this much longer or shorter either way has changed, and its middle tells nothing. */
const SAME_SIDE = 0.1;

type Place = readonly [number, number];

/**
 * How much farther than the drawing as a whole each region moved that surely is the same one. One that the edge of
 * the sheet cuts off tells nothing.
 */
export function sureMatchesOf(
  before: RegionsValue,
  after: RegionsValue,
  cases: readonly Case[],
  ids: readonly string[],
  { move, scale }: Pick<Follow, 'move' | 'scale'>,
): SureMatch[] {
  const olds = new Map(before.ids.map((id, i) => [id, before.table[i]!]));
  const news = new Map(ids.map((id, i) => [id, after.table[i]!]));
  return cases.flatMap(({ state, old, new: fresh }) => {
    const from = old === undefined ? undefined : olds.get(old);
    const to = fresh === undefined ? undefined : news.get(fresh);
    if ((state !== 'kept' && state !== 'moved') || !from || !to) return [];
    if (from.touchesFrame || to.touchesFrame || !isAsLarge(from.boxMm, to.boxMm, scale)) return [];
    const [left, top, right, bottom] = from.boxMm;
    const middle = move([(left + right) / 2, (top + bottom) / 2]);
    const boxMm = to.boxMm;
    const shiftMm = [(boxMm[0] + boxMm[2]) / 2 - middle[0], (boxMm[1] + boxMm[3]) / 2 - middle[1]] as const;
    const moved = [
      boxMm[0] - shiftMm[0],
      boxMm[1] - shiftMm[1],
      boxMm[2] - shiftMm[0],
      boxMm[3] - shiftMm[1],
    ] as const;
    return [{ boxMm: moved, shiftMm }];
  });
}

type Box = readonly [number, number, number, number];

function isAsLarge(from: Box, to: Box, scale: number): boolean {
  return [0, 1].every((axis) => {
    const [before, after] = [(from[axis + 2]! - from[axis]!) * scale, to[axis + 2]! - to[axis]!];
    return Math.abs(after - before) <= SAME_SIDE * before;
  });
}

/** Id of the region at a place, mm; null on bare line and beside the sheet. */
export function regionAt({ labels, ids, ppi }: RegionsValue, [x, y]: Place): string | null {
  const [column, row] = [Math.floor(mmToPx(x, ppi)), Math.floor(mmToPx(y, ppi))];
  if (column < 0 || row < 0 || column >= labels.width || row >= labels.height) return null;
  return ids[labels.data[row * labels.width + column]! - 1] ?? null;
}

/** So fine that the shape of a drawing without pixels is right to a thousandth. */
const SHAPE_PPI = 300;

/** Height over width of a picture that the engine was given; null where it cannot be read. */
export async function shapesOf(assets: readonly string[], tools: Tools): Promise<Map<string, number>> {
  const shapes = new Map<string, number>();
  for (const hash of assets) {
    const { name, bytes } = tools.asset(hash);
    const head = await inspectPicture(bytes, name, { vectorPpi: SHAPE_PPI }).catch(() => null);
    if (head) shapes.set(hash, head.height / head.width);
  }
  return shapes;
}
