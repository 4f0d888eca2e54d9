import { components } from '../../../workers/kernels/components.ts';
import { columnDistance, FAR, squaredDistance } from '../../../workers/kernels/distance.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';

/** Line is coverage from here on. */
export const LINE = 128;
/** Areas under so many pixels are none. */
export const SMALLEST = 100;

/** What a drawing truly closes off. */
export interface Truth {
  /** Area by pixel, 1..count; 0 on line and in what is too small. */
  labels: Uint32Array;
  count: number;
  /** Areas that do not touch the edge of the picture. */
  closed: number;
}

/** The 4-connected free areas of a drawing above the smallest size. */
export function truthOf({ width, height, data }: Plane): Truth {
  const all = new Uint32Array(width * height);
  const found = components({ data, width, height, from: 0, to: LINE - 1, neighbours: 4, labels: all });
  const area = new Uint32Array(found + 1);
  for (const label of all) area[label]!++;
  const name = new Uint32Array(found + 1);
  let count = 0;
  for (let label = 1; label <= found; label++) if (area[label]! >= SMALLEST) name[label] = ++count;
  const labels = all.map((label) => name[label]!);
  const atEdge = new Set<number>();
  for (let x = 0; x < width; x++) for (const i of [x, (height - 1) * width + x]) atEdge.add(labels[i]!);
  for (let y = 0; y < height; y++) for (const i of [y * width, y * width + width - 1]) atEdge.add(labels[i]!);
  atEdge.delete(0);
  return { labels, count, closed: count - atEdge.size };
}

/** The widest disc that fits in each area, px across; index = area. */
export function widestOf({ width, height, data }: Plane, { labels, count }: Truth): Float64Array {
  const columns = new Uint16Array(width * height);
  const sites = { data, lowest: LINE, highest: 255, limit: FAR - 1, framed: true, out: columns };
  columnDistance({ ...sites, width, height }, 0, width);
  const distance2 = new Uint32Array(width * height);
  squaredDistance({ columns, width, out: distance2 }, 0, height);
  const widest = new Float64Array(count + 1);
  labels.forEach((label, i) => {
    widest[label] = Math.max(widest[label]!, distance2[i]!);
  });
  return widest.map((d2) => 2 * Math.sqrt(d2) - 1);
}
