import type { Tools } from '../engine/evaluation.ts';
import type { Plane } from '../kernels/plane.ts';

/** Depths are told apart in so many steps, one byte; what lies deeper is one step more. */
export const DEPTH_STEPS = 254;

/**
 * How deep every pixel lies within what is not in `lowest..highest`, in steps of `limit / DEPTH_STEPS` px; 0 outside.
 * Taken from the tools.
 *
 * @param limit greatest depth that is told, px
 */
export async function depthPlane(
  { width, height, data }: Plane,
  around: { lowest: number; highest: number },
  limit: number,
  tools: Tools,
): Promise<Plane> {
  const columns = new Uint16Array(tools.bytes(width * height * 2).buffer);
  const sites = { ...around, limit, framed: false };
  await tools.bands('columnDistance', { data, width, height, ...sites, out: columns }, width);
  const depth = tools.plane(width, height);
  const table = Uint8Array.from({ length: limit * limit + 1 }, (_, d2) =>
    Math.round((Math.sqrt(d2) / limit) * DEPTH_STEPS),
  );
  await tools.bands('depth', { columns, width, table, beyond: DEPTH_STEPS + 1, out: depth.data }, height);
  tools.free(columns);
  return depth;
}

/** Width in px of a line whose middle is so deep, and one pixel across (`sharp`) or two. */
export function widthOfDepth(depth: number, sharp: boolean, limit: number): number {
  return (2 * depth * limit) / DEPTH_STEPS - (sharp ? 1 : 0);
}
