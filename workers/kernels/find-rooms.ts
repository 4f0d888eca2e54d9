import { type BasinsArgs, basins } from './basins.ts';
import { surveyBasins } from './contacts.ts';
import { joinBasins, type Saddles, saddlesOf } from './rooms.ts';
import { type Walls, wallsOf } from './walls.ts';

/** Rooms: free areas that line and walls across its openings part from one another. */
export interface FoundRooms {
  /** Rooms run 1..count in the order of their first pixels. */
  count: number;
  /** Room by label of the plane, 0 for 0. */
  roomOf: Uint32Array;
  /** Greatest squared distance in each room, px2, infinite where it is beyond the limit; index = room. */
  peak: Float64Array;
  /** Pairs of rooms with a wall between, highest saddle first. */
  saddles: Saddles;
  walls: Walls;
}

/**
 * Finds the rooms of a drawing by neck-width persistence on its distance map. Writes a label to every free pixel, and
 * says which room each label belongs to.
 */
export function findRooms(args: BasinsArgs): FoundRooms {
  const first = basins(args);
  const { contacts, peak } = surveyBasins(args, first.length - 1);
  const saddles = saddlesOf(contacts, args.labels, first);
  const rooms = joinBasins(saddles, first, peak);
  const roomAt = (pixel: number) => rooms.roomOf[args.labels[pixel]!]!;
  return { ...rooms, saddles: between(saddles, rooms.roomOf), walls: wallsOf(contacts, roomAt, args.width) };
}

/** The highest saddle between any two rooms. */
function between(saddles: Saddles, roomOf: Uint32Array): Saddles {
  const seen = new Set<string>();
  const kept: number[] = [];
  saddles.saddle.forEach((_, k) => {
    const [a, b] = [roomOf[saddles.a[k]!]!, roomOf[saddles.b[k]!]!];
    const pair = a < b ? `${a} ${b}` : `${b} ${a}`;
    if (a === b || seen.has(pair)) return;
    seen.add(pair);
    kept.push(k);
  });
  return {
    a: Uint32Array.from(kept, (k) => roomOf[saddles.a[k]!]!),
    b: Uint32Array.from(kept, (k) => roomOf[saddles.b[k]!]!),
    saddle: Float64Array.from(kept, (k) => saddles.saddle[k]!),
  };
}
