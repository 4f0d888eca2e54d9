import { columnDistance, squaredDistance } from '../../../workers/kernels/distance.ts';
import type { Plane } from '../../../workers/kernels/plane.ts';
import { pixelsOf, SIDE, svgOf } from '../../bench/regions/drawings.ts';

/** So near a line a fill may end, or not reach, without being of another colour, px. */
const NEAR_LINE = 6;

/** A colour of each pixel of the coloured variant of a drawing without its lines; null where none is to be judged. */
export async function flatColours(name: string, line: Plane): Promise<(number | null)[]> {
  const pixels = await pixelsOf(withoutLines(svgOf(name, 'color')), name);
  const words = new Uint32Array(pixels.buffer);
  const columns = new Uint16Array(SIDE * SIDE);
  const { width, height, data } = line;
  const sites = {
    data,
    width,
    height,
    lowest: 128,
    highest: 255,
    limit: NEAR_LINE,
    framed: false,
    out: columns,
  };
  columnDistance(sites, 0, width);
  const distance2 = new Uint32Array(SIDE * SIDE);
  squaredDistance({ columns, width, out: distance2 }, 0, height);
  return Array.from(distance2, (d2, i) => (d2 < NEAR_LINE * NEAR_LINE ? null : words[i]!));
}

/** An SVG without its groups whose id begins with `line`, whatever is nested in them. */
export function withoutLines(svg: string): string {
  let text = svg;
  for (let start = /<g id="line[^>]*>/.exec(text); start; start = /<g id="line[^>]*>/.exec(text)) {
    let depth = 0;
    const tags = /<g\b[^>]*?(\/?)>|<\/g>/g;
    tags.lastIndex = start.index;
    for (let tag = tags.exec(text); tag; tag = tags.exec(text)) {
      if (tag[0] === '</g>') depth--;
      else if (tag[1] === '') depth++;
      if (depth > 0) continue;
      text = text.slice(0, start.index) + text.slice(tags.lastIndex);
      break;
    }
  }
  return text;
}

/** For each label the share of its judged pixels that have its commonest colour, and how many are judged. */
export function purities(labels: Uint32Array, colours: readonly (number | null)[], line: Plane) {
  const counts = new Map<number, Map<number, number>>();
  labels.forEach((label, i) => {
    const colour = colours[i]!;
    if (label === 0 || colour === null || line.data[i]! >= 128) return;
    const of = counts.get(label) ?? new Map<number, number>();
    of.set(colour, (of.get(colour) ?? 0) + 1);
    counts.set(label, of);
  });
  return [...counts].map(([label, of]) => {
    const judged = [...of.values()].reduce((sum, count) => sum + count, 0);
    return { label, judged, purity: Math.max(...of.values()) / judged };
  });
}
