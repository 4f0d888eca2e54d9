import { type BasinsArgs, basins } from './basins.ts';
import { surveyBasins } from './contacts.ts';
import { joinBasins, type Rooms } from './rooms.ts';
import { type Walls, wallsOf } from './walls.ts';

/** Rooms: free areas that line and walls across its openings part from one another. */
export interface FoundRooms extends Rooms {
  walls: Walls;
}

/**
 * Finds the rooms of a drawing by neck-width persistence on its distance map. Writes a label to every free pixel, and
 * says which room each label belongs to.
 */
export function findRooms(args: BasinsArgs): FoundRooms {
  const first = basins(args);
  const { contacts, peak } = surveyBasins(args, first.length - 1);
  const rooms = joinBasins(contacts, args.labels, first, peak);
  return { ...rooms, walls: wallsOf(contacts, args.labels, rooms.roomOf, args.width) };
}
