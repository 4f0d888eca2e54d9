import type { Point } from '../camera.ts';

/**
 * Parts things into those that stand apart and those that stand too near to one before them in the list. The same
 * ones wherever the sheet lies.
 *
 * @param distance how far apart they must stand, in the unit of the places
 */
export function thinOut<Thing>(
  things: readonly Thing[],
  placeOf: (thing: Thing) => Point,
  distance: number,
): { apart: Thing[]; crowded: Thing[] } {
  const cells = new Map<string, Point[]>();
  const apart: Thing[] = [];
  const crowded: Thing[] = [];
  for (const thing of things) {
    const place = placeOf(thing);
    const [column, row] = [Math.floor(place.x / distance), Math.floor(place.y / distance)];
    if (isNear(cells, column, row, place, distance)) {
      crowded.push(thing);
      continue;
    }
    apart.push(thing);
    const key = `${column} ${row}`;
    cells.set(key, [...(cells.get(key) ?? []), place]);
  }
  return { apart, crowded };
}

function isNear(
  cells: ReadonlyMap<string, readonly Point[]>,
  column: number,
  row: number,
  { x, y }: Point,
  distance: number,
): boolean {
  for (let c = column - 1; c <= column + 1; c++)
    for (let r = row - 1; r <= row + 1; r++)
      for (const other of cells.get(`${c} ${r}`) ?? [])
        if (Math.hypot(other.x - x, other.y - y) < distance) return true;
  return false;
}
