import type { Tools } from '../engine/evaluation.ts';
import type { Plane } from '../kernels/plane.ts';

/** How near the edge of ink each pixel lies, 255 at the edge falling to 0 at `reachPx`; free it when done. */
export async function edgeOfInk(plate: Plane, reachPx: number, tools: Tools): Promise<Plane> {
  const { width, height } = plate;
  const share = tools.plane(width, height);
  const out = tools.plane(width, height);
  await tools.bands('inkShare', { plate, reach: Math.max(1, Math.round(reachPx)), out: share }, height);
  await tools.bands('paperNear', { share, out }, height);
  tools.free(share.data);
  return out;
}
