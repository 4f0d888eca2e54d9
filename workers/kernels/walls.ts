import type { Contacts } from './contacts.ts';
import { PixelIndex } from './pixel-index.ts';
import { rootOf, unionOf, unite } from './union.ts';

/** Walls between rooms, one entry each, the order that of their first contact. Places are pixel indices. */
export interface Walls {
  a: Uint32Array;
  b: Uint32Array;
  /** Width of the opening: 2 sqrt(greatest squared distance) - 1, px. */
  width: Float64Array;
  /** The widest place of the wall: the middle of the opening. */
  place: Uint32Array;
  /** The two pixels of the wall that lie farthest apart: where it meets the line. */
  endA: Uint32Array;
  endB: Uint32Array;
}

/** Contacts between different rooms, one entry each, a < b. */
interface Parting {
  p: Uint32Array;
  q: Uint32Array;
  saddle: Uint32Array;
  a: Uint32Array;
  b: Uint32Array;
}

/**
 * Gathers touching pixels of different rooms into walls: one connected run (8-neighbours) between the same two rooms.
 *
 * @param labels basin by pixel
 */
export function wallsOf(contacts: Contacts, labels: Uint32Array, roomOf: Uint32Array, width: number): Walls {
  const parting = partingOf(contacts, labels, roomOf);
  const walls = runsOf(parting, width).map((run) => wallOf(run, parting, width));
  return {
    a: Uint32Array.from(walls, (wall) => wall.a),
    b: Uint32Array.from(walls, (wall) => wall.b),
    width: Float64Array.from(walls, (wall) => wall.width),
    place: Uint32Array.from(walls, (wall) => wall.place),
    endA: Uint32Array.from(walls, (wall) => wall.ends[0]),
    endB: Uint32Array.from(walls, (wall) => wall.ends[1]),
  };
}

function partingOf({ p, q, saddle }: Contacts, labels: Uint32Array, roomOf: Uint32Array): Parting {
  const roomAt = (pixel: number) => roomOf[labels[pixel]!]!;
  const kept = p.map((_, k) => k).filter((k) => roomAt(p[k]!) !== roomAt(q[k]!));
  return {
    p: kept.map((k) => p[k]!),
    q: kept.map((k) => q[k]!),
    saddle: kept.map((k) => saddle[k]!),
    a: kept.map((k) => Math.min(roomAt(p[k]!), roomAt(q[k]!))),
    b: kept.map((k) => Math.max(roomAt(p[k]!), roomAt(q[k]!))),
  };
}

/** Indices of contacts by connected run. */
function runsOf({ p, q, a, b }: Parting, width: number): number[][] {
  const home = unionOf(p.length);
  const index = new PixelIndex(2 * p.length);
  for (let k = 0; k < p.length; k++) {
    for (const pixel of [p[k]!, q[k]!]) {
      const left = pixel % width === 0 ? 0 : -1;
      const right = pixel % width === width - 1 ? 0 : 1;
      for (let row = pixel - width; row <= pixel + width; row += width)
        for (let near = row + left; near <= row + right; near++)
          for (let place = index.lastAt(near); place !== 0; place = index.before(place)) {
            const other = index.entry(place);
            if (a[other] === a[k] && b[other] === b[k]) unite(home, k, other);
          }
    }
    index.add(p[k]!, k);
    index.add(q[k]!, k);
  }
  const runs = new Map<number, number[]>();
  for (let k = 0; k < p.length; k++) {
    const run = runs.get(rootOf(home, k));
    if (run) run.push(k);
    else runs.set(rootOf(home, k), [k]);
  }
  return [...runs.values()];
}

function wallOf(run: readonly number[], { p, saddle, a, b }: Parting, width: number) {
  const widest = run.reduce((best, k) => (saddle[k]! > saddle[best]! ? k : best));
  const pixels = run.map((k) => p[k]!);
  const from = farthest(pixels, p[widest]!, width);
  return {
    a: a[widest]!,
    b: b[widest]!,
    width: 2 * Math.sqrt(saddle[widest]!) - 1,
    place: p[widest]!,
    ends: [from, farthest(pixels, from, width)] as const,
  };
}

/** The pixel that lies farthest from another; the first of equals. */
function farthest(pixels: readonly number[], from: number, width: number): number {
  const distance2 = (pixel: number) => {
    const dx = (pixel % width) - (from % width);
    const dy = Math.floor(pixel / width) - Math.floor(from / width);
    return dx * dx + dy * dy;
  };
  return pixels.reduce((best, pixel) => (distance2(pixel) > distance2(best) ? pixel : best));
}
