import type { RegionMap } from '../../workers/client.ts';

/** A step along a pixel's edge: right, down, left, up. */
const STEPS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

const drawn = new WeakMap<RegionMap, Map<number, string>>();

/** So many edges on either side are averaged, so that slanting borders look straight; small loops stay as they are. */
const AVERAGED = 3;
const LEAST_AVERAGED = 24;
/** Of averaged corners, one in so many is drawn. */
const DRAWN = 2;

/**
 * The outline of a region as an SVG path in mm, all its pieces and holes. Made once for each region of a map.
 *
 * @param label 1..regions.length
 */
export function outlineOf(map: RegionMap, label: number): string {
  const paths = drawn.get(map) ?? new Map<number, string>();
  drawn.set(map, paths);
  const path = paths.get(label) ?? trace(map, label);
  paths.set(label, path);
  return path;
}

/** Across and down, px. */
type Place = readonly [number, number];

type Inside = (x: number, y: number) => boolean;

function trace(map: RegionMap, label: number): string {
  const { width, labels } = map;
  const mmPerPx = 25.4 / map.ppi;
  const [left, top, right, bottom] = boxOf(map, label);
  const columns = right - left;
  const inside: Inside = (x, y) =>
    x >= left && x < right && y >= top && y < bottom && labels[y * width + x] === label;
  const walked = new Uint8Array(columns * (bottom - top));
  const inMm = (px: number) => Math.round(px * mmPerPx * 1000) / 1000;
  let path = '';
  for (let y = top; y < bottom; y++) {
    const row = y * width;
    for (let x = left; x < right; x++) {
      if (labels[row + x] !== label || (y > top && labels[row - width + x] === label)) continue;
      if (walked[(y - top) * columns + x - left]) continue;
      const edges = walk(inside, x, y, (atX, atY) => {
        walked[(atY - top) * columns + atX - left] = 1;
      });
      const corners = smooth(edges);
      path += `M${corners.map(([cx, cy]) => `${inMm(cx)} ${inMm(cy)}`).join('L')}Z`;
    }
  }
  return path;
}

/**
 * One closed border, the region on the right hand, from the upper edge of a pixel: the middles of its edges.
 *
 * @param mark told of every upper edge that the border takes
 */
function walk(inside: Inside, startX: number, startY: number, mark: (x: number, y: number) => void): Place[] {
  const edges: Place[] = [];
  let x = startX;
  let y = startY;
  let turn = 0;
  do {
    const [dx, dy] = STEPS[turn]!;
    if (turn === 0) mark(x, y);
    edges.push([x + dx / 2, y + dy / 2]);
    x += dx;
    y += dy;
    turn = turnAt(inside, x, y, turn);
  } while (x !== startX || y !== startY || turn !== 0);
  return edges;
}

/** A closed line through the running averages of its places. */
function smooth(places: readonly Place[]): readonly Place[] {
  const count = places.length;
  if (count < LEAST_AVERAGED) return places;
  const window = 2 * AVERAGED + 1;
  const at = (i: number) => places[(i + count) % count]!;
  let [x, y] = [0, 0];
  for (let i = -AVERAGED; i <= AVERAGED; i++) {
    x += at(i)[0];
    y += at(i)[1];
  }
  const averages: Place[] = [];
  for (let i = 0; i < count; i++) {
    if (i % DRAWN === 0) averages.push([x / window, y / window]);
    const [enters, leaves] = [at(i + AVERAGED + 1), at(i - AVERAGED)];
    x += enters[0] - leaves[0];
    y += enters[1] - leaves[1];
  }
  return averages;
}

/** The way on from a corner: right when the pixel ahead on the right is outside, left when both ahead are inside. */
function turnAt(inside: Inside, x: number, y: number, turn: number): number {
  const [dx, dy] = STEPS[turn]!;
  const [rx, ry] = STEPS[(turn + 1) % 4]!;
  if (!inside(x + (dx + rx - 1) / 2, y + (dy + ry - 1) / 2)) return (turn + 1) % 4;
  return inside(x + (dx - rx - 1) / 2, y + (dy - ry - 1) / 2) ? (turn + 3) % 4 : turn;
}

/** Pixels that a region's box covers: left, top, and right and bottom just beyond. */
function boxOf(map: RegionMap, label: number): [number, number, number, number] {
  const [left, top, right, bottom] = map.regions[label - 1]!.boxMm.map((mm) => (mm * map.ppi) / 25.4);
  return [
    Math.max(0, Math.floor(left!) - 1),
    Math.max(0, Math.floor(top!) - 1),
    Math.min(map.width, Math.ceil(right!) + 1),
    Math.min(map.height, Math.ceil(bottom!) + 1),
  ];
}
