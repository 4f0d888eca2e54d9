import type { Contacts } from './contacts.ts';
import { rootOf, unionOf } from './union.ts';

/** A passage narrower than this part of the room it leads from is a neck. Found by trial on line drawings. */
export const NECK = 0.6;

/** Pairs of basins or rooms that touch, a before b, highest saddle first. */
export interface Saddles {
  a: Uint32Array;
  b: Uint32Array;
  /** px2 */
  saddle: Float64Array;
}

/**
 * The highest saddle of every pair that touches: in falling height, then by the lower, then by the higher of the two.
 *
 * @param labels what each contact's pixels belong to
 * @param rank which of two counts as lower
 */
export function saddlesOf(contacts: Contacts, labels: Uint32Array, rank: ArrayLike<number>): Saddles {
  const highest = new Map<number, number>();
  const size = rank.length;
  for (let k = 0; k < contacts.p.length; k++) {
    const a = labels[contacts.p[k]!]!;
    const b = labels[contacts.q[k]!]!;
    const key = rank[a]! < rank[b]! ? a * size + b : b * size + a;
    const before = highest.get(key);
    if (before === undefined || contacts.saddle[k]! > before) highest.set(key, contacts.saddle[k]!);
  }
  const keys = [...highest.keys()];
  const lower = (key: number) => rank[Math.floor(key / size)]!;
  const higher = (key: number) => rank[key % size]!;
  keys.sort((j, k) => highest.get(k)! - highest.get(j)! || lower(j) - lower(k) || higher(j) - higher(k));
  return {
    a: Uint32Array.from(keys, (key) => Math.floor(key / size)),
    b: Uint32Array.from(keys, (key) => key % size),
    saddle: Float64Array.from(keys, (key) => highest.get(key)!),
  };
}

/** Basins that no neck parts. */
export interface Rooms {
  count: number;
  /** Room by basin, 1..count in the order of their first pixels; index 0 unused. */
  roomOf: Uint32Array;
  /** Greatest squared distance in each room, px2; index = room. */
  peak: Float64Array;
}

/**
 * Joins basins over their saddles, the highest first, but for necks: saddles lower than `NECK` squared times the lower
 * of both peaks. Peaks persist as in watershed by topological persistence: Edelsbrunner, Letscher & Zomorodian 2002
 * (from memory).
 *
 * @param first first pixel by basin
 * @param peak by basin, px2
 */
export function joinBasins(saddles: Saddles, first: Uint32Array, peak: Float64Array): Rooms {
  const home = unionOf(first.length);
  const highest = peak.slice();
  for (let k = 0; k < saddles.saddle.length; k++) {
    const a = rootOf(home, saddles.a[k]!);
    const b = rootOf(home, saddles.b[k]!);
    if (a === b) continue;
    if (saddles.saddle[k]! < NECK * NECK * Math.min(highest[a]!, highest[b]!)) continue;
    const [lower, higher] = first[a]! < first[b]! ? [a, b] : [b, a];
    home[higher] = lower;
    highest[lower] = Math.max(highest[a]!, highest[b]!);
  }
  const roots = [...home.keys()].filter((basin) => basin > 0 && home[basin] === basin);
  roots.sort((a, b) => first[a]! - first[b]!);
  const room = new Uint32Array(first.length);
  roots.forEach((root, i) => {
    room[root] = i + 1;
  });
  return {
    count: roots.length,
    roomOf: Uint32Array.from(home, (_, basin) => room[rootOf(home, basin)]!),
    peak: Float64Array.of(0, ...roots.map((root) => highest[root]!)),
  };
}
