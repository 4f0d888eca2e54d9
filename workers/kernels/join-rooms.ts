import type { Borders } from './borders.ts';
import { joinSmall } from './join-small.ts';
import type { Saddles } from './rooms.ts';
import { rootOf, unionOf, unite } from './union.ts';

/** What is known of rooms; index = room, 0 unused. */
export interface RoomFacts {
  count: number;
  /** Free pixels. */
  area: Uint32Array;
  /** Pixels with what is filled under the line. */
  filled: Uint32Array;
  /** Greatest squared distance to the line, px2. */
  peak: Float64Array;
  /** Borders under the line. */
  borders: Borders;
  saddles: Saddles;
  /** Longest run along a side of the frame, px. */
  frameRun: Uint32Array;
}

export interface JoinChoices {
  /** px; 0 keeps every area */
  smallest: number;
  /** px; areas that keep nearer to the line go */
  roughness: number;
  /** Rooms with a longer run along the frame are one, px; null where the frame parts them. */
  frameJoins: number | null;
  /** Pairs of rooms whose wall is taken down. */
  opened: readonly (readonly [number, number])[];
  /** Pairs of rooms to be one region in the end. */
  joins: readonly (readonly [number, number])[];
}

/** A new number for every old one; 0 for 0. */
export interface Renaming {
  table: Uint32Array;
  count: number;
}

/**
 * From rooms to regions: walls that are taken down, the frame, then areas that are too small or too shallow join the
 * neighbour over the highest saddle, then those that only line parts join across it, then what a person joined.
 *
 * @returns region by room, 1..count in the order of each region's first room
 */
export function joinRooms(rooms: RoomFacts, choices: JoinChoices): Renaming {
  const home = unionOf(rooms.count + 1);
  for (const [a, b] of choices.opened) unite(home, a, b);
  if (choices.frameJoins !== null) joinAtFrame(home, rooms.frameRun, choices.frameJoins);
  absorb(home, rooms, choices);
  const sets = compact(home);
  const small = joinSmall(
    sumBy(sets, rooms.area),
    sumBy(sets, rooms.filled),
    bordersBy(sets, rooms.borders),
    choices.smallest,
  );
  const regionOf = (room: number) => small.table[sets.table[room]!]!;
  const joined = unionOf(small.count + 1);
  for (const [a, b] of choices.joins) unite(joined, regionOf(a), regionOf(b));
  const last = compact(joined);
  return {
    table: Uint32Array.from(home, (_, room) => (room === 0 ? 0 : last.table[regionOf(room)]!)),
    count: last.count,
  };
}

function joinAtFrame(home: Uint32Array, frameRun: Uint32Array, least: number): void {
  const touching = [...frameRun.keys()].filter((room) => frameRun[room]! > least);
  for (const room of touching) unite(home, touching[0]!, room);
}

function absorb(home: Uint32Array, rooms: RoomFacts, { smallest, roughness }: JoinChoices): void {
  const area = Float64Array.from(rooms.area, () => 0);
  const peak = Float64Array.from(rooms.peak, () => 0);
  for (let room = 1; room <= rooms.count; room++) {
    const root = rootOf(home, room);
    area[root]! += rooms.area[room]!;
    peak[root] = Math.max(peak[root]!, rooms.peak[room]!);
  }
  const goes = (root: number) => area[root]! < smallest || peak[root]! < roughness * roughness;
  rooms.saddles.saddle.forEach((_, k) => {
    const a = rootOf(home, rooms.saddles.a[k]!);
    const b = rootOf(home, rooms.saddles.b[k]!);
    if (a === b || !(goes(a) || goes(b))) return;
    const root = unite(home, a, b);
    area[root] = area[a]! + area[b]!;
    peak[root] = Math.max(peak[a]!, peak[b]!);
  });
}

/** Sets numbered 1..count in the order of their roots. */
export function compact(home: Uint32Array): Renaming {
  const table = new Uint32Array(home.length);
  let count = 0;
  for (let member = 1; member < home.length; member++)
    if (rootOf(home, member) === member) table[member] = ++count;
  for (let member = 1; member < home.length; member++) table[member] = table[rootOf(home, member)]!;
  return { table, count };
}

/** Sums of what is known by old number, by new number. */
export function sumBy({ table, count }: Renaming, values: ArrayLike<number>): Float64Array {
  const sums = new Float64Array(count + 1);
  for (let i = 1; i < table.length; i++) sums[table[i]!]! += values[i]!;
  return sums;
}

/** Borders between new numbers; what has become one has none inside. */
export function bordersBy({ table, count }: Renaming, borders: Borders): Borders {
  const lengths = new Map<number, number>();
  borders.length.forEach((length, k) => {
    const a = table[borders.a[k]!]!;
    const b = table[borders.b[k]!]!;
    if (a === b) return;
    const key = Math.min(a, b) * (count + 1) + Math.max(a, b);
    lengths.set(key, (lengths.get(key) ?? 0) + length);
  });
  const keys = [...lengths.keys()].sort((j, k) => j - k);
  return {
    a: Uint32Array.from(keys, (key) => Math.floor(key / (count + 1))),
    b: Uint32Array.from(keys, (key) => key % (count + 1)),
    length: Float64Array.from(keys, (key) => lengths.get(key)!),
  };
}
