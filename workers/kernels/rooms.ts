import type { Contacts } from './contacts.ts';
import { rootOf, unionOf } from './union.ts';

/** A passage narrower than this part of the room it leads from is a neck. Chosen on half of the bench's line drawings. */
export const NECK = 0.66;

/** Pairs of rooms with a wall between, highest saddle first, one entry a pair. */
export interface Saddles {
  a: Uint32Array;
  b: Uint32Array;
  /** px2 */
  saddle: Uint32Array;
}

/** Basins that no neck parts. */
export interface Rooms {
  count: number;
  /** Room by basin, 1..count in the order of the first pixel of their lowest basin; 0 for 0. */
  roomOf: Uint32Array;
  saddles: Saddles;
}

/**
 * Joins basins over their saddles, the highest first, then by the lower, then by the higher of the two; but not over
 * necks: saddles lower than `NECK` squared times the lower of both peaks. Peaks persist as in topological
 * persistence: Edelsbrunner, Letscher & Zomorodian 2002 (from memory).
 *
 * @param labels basin by pixel
 * @param first first pixel by basin: of two basins that with the earlier one is the lower
 * @param peak greatest squared distance by basin, px2
 */
export function joinBasins(
  contacts: Contacts,
  labels: Uint32Array,
  first: Uint32Array,
  peak: Float64Array,
): Rooms {
  const size = first.length;
  const order = orderOf(first);
  const rank = new Uint32Array(size);
  order.forEach((basin, place) => {
    rank[basin] = place;
  });
  const highest = Float64Array.from(order, (basin) => peak[basin]!);
  const home = unionOf(size);
  const necks: { key: number; saddle: number }[] = [];
  for (const { saddle, pairs } of falling(contacts, labels, rank))
    for (const key of pairs) {
      const a = rootOf(home, Math.floor(key / size));
      const b = rootOf(home, key % size);
      if (a === b) continue;
      if (saddle < NECK * NECK * Math.min(highest[a]!, highest[b]!)) {
        necks.push({ key, saddle });
        continue;
      }
      home[Math.max(a, b)] = Math.min(a, b);
      highest[Math.min(a, b)] = Math.max(highest[a]!, highest[b]!);
    }
  const room = new Uint32Array(size);
  let count = 0;
  for (let place = 1; place < size; place++) if (home[place] === place) room[place] = ++count;
  for (let place = 1; place < size; place++) room[place] = room[rootOf(home, place)]!;
  const between = necks.map(({ key, saddle }) => ({
    a: room[Math.floor(key / size)]!,
    b: room[key % size]!,
    saddle,
  }));
  return { count, roomOf: rank.map((place) => room[place]!), saddles: highestOf(between, count) };
}

/** Basins by their first pixel, 0 first. Seeds and tops each come in that order already. */
function orderOf(first: Uint32Array): Uint32Array {
  const order = new Uint32Array(first.length);
  let tops = 1;
  while (tops < first.length && first[tops]! >= first[tops - 1]!) tops++;
  for (let place = 0, seed = 0, top = tops; place < first.length; place++) {
    const takesTop = seed === tops || (top < first.length && first[top]! < first[seed]!);
    order[place] = takesTop ? top++ : seed++;
  }
  return order;
}

/** Pairs of basins that touch, as `lower rank * size + higher rank`, in groups of falling saddle. */
function* falling(contacts: Contacts, labels: Uint32Array, rank: Uint32Array) {
  const { p, q, saddle } = contacts;
  const heights = Uint32Array.from(saddle).sort();
  const next = new Map<number, number>();
  heights.forEach((height, place) => {
    if (!next.has(height)) next.set(height, place);
  });
  const starts = [...next];
  const keys = new Float64Array(saddle.length);
  for (let k = 0; k < saddle.length; k++) {
    const a = rank[labels[p[k]!]!]!;
    const b = rank[labels[q[k]!]!]!;
    const place = next.get(saddle[k]!)!;
    keys[place] = Math.min(a, b) * rank.length + Math.max(a, b);
    next.set(saddle[k]!, place + 1);
  }
  for (let g = starts.length - 1; g >= 0; g--) {
    const [height, start] = starts[g]!;
    const end = g + 1 < starts.length ? starts[g + 1]![1] : keys.length;
    yield { saddle: height, pairs: keys.subarray(start, end).sort() };
  }
}

/** The first, and so the highest, saddle of each pair of rooms. */
function highestOf(between: readonly { a: number; b: number; saddle: number }[], count: number): Saddles {
  const seen = new Set<number>();
  const kept = between.filter(({ a, b }) => {
    const pair = Math.min(a, b) * (count + 1) + Math.max(a, b);
    if (a === b || seen.has(pair)) return false;
    seen.add(pair);
    return true;
  });
  return {
    a: Uint32Array.from(kept, ({ a }) => a),
    b: Uint32Array.from(kept, ({ b }) => b),
    saddle: Uint32Array.from(kept, ({ saddle }) => saddle),
  };
}
