import type { Tools } from '../engine/evaluation.ts';
import type { ColumnDistanceArgs } from '../kernels/distance.ts';
import type { Plane } from '../kernels/plane.ts';

/** Distance of each pixel to the nearest site of its column, as scratch: free it when done. */
export async function columnDistances(
  plane: Plane,
  sites: Pick<ColumnDistanceArgs, 'lowest' | 'highest' | 'limit' | 'framed'>,
  tools: Tools,
): Promise<Uint16Array<SharedArrayBuffer>> {
  const { width, height, data } = plane;
  const out = new Uint16Array(tools.bytes(width * height * 2).buffer);
  await tools.bands('columnDistance', { data, width, height, ...sites, out }, width);
  return out;
}
