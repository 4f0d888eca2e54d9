import type { Tools } from '../engine/evaluation.ts';
import type { Plane } from '../kernels/plane.ts';

/** A change of a plate kept within an area; `after` is let go. */
export async function keptWithin(before: Plane, after: Plane, mask: Plane, tools: Tools): Promise<Plane> {
  const out = tools.plane(before.width, before.height);
  await tools.bands('within', { before, after, mask, out }, before.height);
  tools.free(after.data);
  return out;
}
