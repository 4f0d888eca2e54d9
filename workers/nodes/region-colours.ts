import type { Tools } from '../engine/evaluation.ts';
import type { RegionsValue } from '../engine/values.ts';
import type { Affine } from '../kernels/offset.ts';
import { mmToPx } from '../kernels/plane.ts';
import type { RoughPicture } from '../kernels/shrink-rough.ts';
import { columnDistances } from './column-distances.ts';

/** How far from a region's edge, which lies under the line, its colour is taken where it is wide enough. */
const INWARD_MM = 0.6;
/** Squared distances up to this fit into two bytes with room for what is beyond. */
const MOST_SHORT = 0xfffe;

/** The colour of each region in a rough, by label: see `roughColours`. */
export async function regionColours(
  { labels, table, ppi }: RegionsValue,
  rough: RoughPicture,
  place: Affine,
  tools: Tools,
): Promise<Int32Array> {
  const { width, height, data } = labels;
  const inward = mmToPx(INWARD_MM, ppi);
  const edges = tools.plane(width, height);
  await tools.bands('labelEdges', { labels, out: edges }, height);
  const limit = Math.ceil(2 * inward);
  const sites = { lowest: 255, highest: 255, limit, framed: true };
  const columns = await columnDistances(edges, sites, tools);
  const limit2 = limit * limit;
  const distance2 =
    limit2 > MOST_SHORT
      ? new Uint32Array(tools.bytes(width * height * 4).buffer)
      : new Uint16Array(tools.bytes(width * height * 2).buffer);
  const zones = edges.data;
  await tools.bands('nearDistance', { columns, width, near2: limit2, limit2, distance2, zones }, height);
  tools.free(columns);
  tools.free(edges.data);
  const count = table.length;
  const args = { labels: data, width, height, count, distance2, inward, rough, place };
  return tools.whole('roughColours', args);
}
