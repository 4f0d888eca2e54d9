import type { Contacts } from './contacts.ts';
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

/**
 * Gathers touching pixels of different rooms into walls: one connected run (8-neighbours) between the same two rooms.
 *
 * @param roomAt the room of a pixel
 */
export function wallsOf(contacts: Contacts, roomAt: (pixel: number) => number, width: number): Walls {
  const parting = contactsThatPart(contacts, roomAt);
  const home = unionOf(parting.length);
  const pairs = new Map<string, number>();
  const there = new Map<number, number>();
  for (const [n, k] of parting.entries()) {
    const [p, q] = [contacts.p[k]!, contacts.q[k]!];
    const name = [roomAt(p), roomAt(q)].sort().join(' ');
    if (!pairs.has(name)) pairs.set(name, pairs.size);
    const keyOf = (pixel: number) => pixel * parting.length + pairs.get(name)!;
    for (const near of [...aroundOf(p, width), ...aroundOf(q, width)]) {
      const other = there.get(keyOf(near));
      if (other !== undefined) unite(home, n, other);
    }
    there.set(keyOf(p), n);
    there.set(keyOf(q), n);
  }
  const runs = new Map<number, number[]>();
  parting.forEach((k, n) => {
    const run = runs.get(rootOf(home, n));
    if (run) run.push(k);
    else runs.set(rootOf(home, n), [k]);
  });
  const walls = [...runs.values()].map((run) => wallOf(run, contacts, roomAt, width));
  return {
    a: Uint32Array.from(walls, (wall) => wall.a),
    b: Uint32Array.from(walls, (wall) => wall.b),
    width: Float64Array.from(walls, (wall) => wall.width),
    place: Uint32Array.from(walls, (wall) => wall.place),
    endA: Uint32Array.from(walls, (wall) => wall.ends[0]),
    endB: Uint32Array.from(walls, (wall) => wall.ends[1]),
  };
}

function contactsThatPart(contacts: Contacts, roomAt: (pixel: number) => number): number[] {
  const parting: number[] = [];
  for (let k = 0; k < contacts.p.length; k++)
    if (roomAt(contacts.p[k]!) !== roomAt(contacts.q[k]!)) parting.push(k);
  return parting;
}

/** A pixel and its 8 neighbours; a neighbour across the edge of the picture belongs to no contact beside it. */
function aroundOf(pixel: number, width: number): number[] {
  const rows = [pixel - width, pixel, pixel + width];
  const left = pixel % width === 0 ? 0 : -1;
  const right = pixel % width === width - 1 ? 0 : 1;
  return rows.flatMap((middle) => [middle + left, middle, middle + right]);
}

function wallOf(
  run: readonly number[],
  { p, q, saddle }: Contacts,
  roomAt: (pixel: number) => number,
  width: number,
) {
  const widest = run.reduce((best, k) => (saddle[k]! > saddle[best]! ? k : best));
  const [one, other] = [roomAt(p[widest]!), roomAt(q[widest]!)];
  const pixels = run.map((k) => p[k]!);
  const from = farthest(pixels, p[widest]!, width);
  return {
    a: Math.min(one, other),
    b: Math.max(one, other),
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
