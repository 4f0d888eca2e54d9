import { pastEqual, wordsOf } from './byte-runs.ts';
import { columnDistance } from './distance.ts';
import { findRooms } from './find-rooms.ts';
import { narrowest } from './narrowest.ts';
import { nearDistance } from './near-distance.ts';
import { NECK } from './rooms.ts';

export interface OpeningsArgs {
  line: Uint8Array;
  width: number;
  height: number;
  /** Line is coverage from here on. */
  threshold: number;
  /** Looks at blocks of so many pixels each way; a block with any line in it is line. */
  block: number;
  /** Openings wider than this are none, px. */
  widest: number;
}

/** Necks of the free areas, one entry each; lengths in px. */
export interface Openings {
  width: Float64Array;
  /** Middle of the opening. */
  x: Float64Array;
  y: Float64Array;
  /** A free pixel on either side of it. */
  sideA: Uint32Array;
  sideB: Uint32Array;
  /** Free pixels of the smaller of both sides, about. */
  area: Float64Array;
}

/** Openings up to a width: necks found on a smaller picture, then measured on the drawing itself. */
export function openings(args: OpeningsArgs): Openings {
  const { block, threshold } = args;
  const [width, height] = [Math.ceil(args.width / block), Math.ceil(args.height / block)];
  const small = shrunk(args, width, height);
  const half = (args.widest / block + 1) / 2;
  const limit2 = Math.floor((half / NECK) * (half / NECK)) + 1;
  const columns = new Uint16Array(width * height);
  const limit = Math.ceil(Math.sqrt(limit2));
  const sites = { data: small, lowest: threshold, highest: 255, limit, framed: true, out: columns };
  columnDistance({ ...sites, width, height }, 0, width);
  const distance2 = limit2 < 0xffff ? new Uint16Array(width * height) : new Uint32Array(width * height);
  const zones = new Uint8Array(width * height);
  nearDistance({ columns, width, near2: half * half, limit2, distance2, zones }, 0, height);
  const labels = new Uint32Array(width * height);
  const { count, roomOf, walls } = findRooms({ distance2, zones, width, height, labels });
  const { area, deepest } = deepestOf(labels, roomOf, distance2, count);
  const full = (at: number) => {
    const x = Math.min(args.width - 1, (at % width) * block + (block >> 1));
    return Math.min(args.height - 1, Math.floor(at / width) * block + (block >> 1)) * args.width + x;
  };
  const found = Array.from(walls.width, (about, k) => {
    const at = walls.place[k]!;
    const place = [((at % width) + 0.5) * block, (Math.floor(at / width) + 0.5) * block] as const;
    const measured = narrowest(args, place, (about * 0.6 + 4) * block);
    return { ...measured, a: walls.a[k]!, b: walls.b[k]! };
  });
  return {
    width: Float64Array.from(found, (opening) => opening.width),
    x: Float64Array.from(found, (opening) => opening.place[0]),
    y: Float64Array.from(found, (opening) => opening.place[1]),
    sideA: Uint32Array.from(found, ({ a }) => full(deepest[a]!)),
    sideB: Uint32Array.from(found, ({ b }) => full(deepest[b]!)),
    area: Float64Array.from(found, ({ a, b }) => Math.min(area[a]!, area[b]!) * block * block),
  };
}

/** Whether there is any line in each block: its greatest coverage, or 0. */
function shrunk(args: OpeningsArgs, width: number, height: number): Uint8Array {
  const { line, block } = args;
  const small = new Uint8Array(width * height);
  const words = wordsOf(line);
  for (let y = 0; y < args.height; y++) {
    const row = y * args.width;
    const to = Math.floor(y / block) * width;
    for (let i = row; i < row + args.width; ) {
      if (line[i] !== 0) {
        const at = to + Math.floor((i - row) / block);
        small[at] = Math.max(small[at]!, line[i]!);
      }
      i = line[i] === 0 ? pastEqual(line, words, i, row + args.width) : i + 1;
    }
  }
  return small;
}

/** Area of every room, and the first of its pixels that lie farthest from the line. */
function deepestOf(labels: Uint32Array, roomOf: Uint32Array, distance2: ArrayLike<number>, count: number) {
  const area = new Uint32Array(count + 1);
  const deepest = new Uint32Array(count + 1);
  const depth = new Float64Array(count + 1);
  labels.forEach((label, i) => {
    const room = roomOf[label]!;
    area[room]!++;
    if (distance2[i]! <= depth[room]!) return;
    depth[room] = distance2[i]!;
    deepest[room] = i;
  });
  return { area, deepest };
}
