import type { Tools } from '../engine/evaluation.ts';
import type { Plane } from '../kernels/plane.ts';

/** Coverages below this are the foot of a soft edge, not ink. */
const LEAST_INK = 8;

/** Share of ink about each pixel, `reachPx` each way, 0..255; free it when done. */
export async function inkAbout(
  plate: Plane,
  reachPx: number,
  tools: Tools,
  least: number = LEAST_INK,
): Promise<Plane> {
  const out = tools.plane(plate.width, plate.height);
  const reach = Math.max(1, Math.round(reachPx));
  await tools.bands('inkShare', { plate, reach, least, out }, plate.height);
  return out;
}

/** How near the edge of ink each pixel lies, 255 at the edge falling to 0 at `reachPx`; free it when done. */
export async function edgeOfInk(plate: Plane, reachPx: number, tools: Tools): Promise<Plane> {
  const share = await inkAbout(plate, reachPx, tools);
  const out = tools.plane(plate.width, plate.height);
  await tools.bands('paperNear', { share, out }, plate.height);
  tools.free(share.data);
  return out;
}
