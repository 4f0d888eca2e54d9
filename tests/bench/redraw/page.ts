import type { Plane } from '../../../workers/kernels/plane.ts';
import { sharedPlane } from '../pictures.ts';
import { type Half, isStroked, lineOf, namesOf, SIDE, svgOf } from '../regions/drawings.ts';

/** Drawings side by side on a page, each way. */
const ACROSS = 3;
const CELL = SIDE / ACROSS;

/** Pages of nine line drawings each, of one half. */
export function pagesOf(half: Half, pages: number): string[][] {
  const names = namesOf(half).filter((name) => isStroked(svgOf(name, 'black')));
  return Array.from({ length: pages }, (_, page) => names.slice(page * 9, page * 9 + 9));
}

/** A page as line coverage, with strokes so many times as wide; drawings that are left out leave their place empty. */
export async function pageLine(
  names: readonly string[],
  strokes: number,
  without: number | null = null,
): Promise<Plane> {
  const page = sharedPlane(SIDE, SIDE);
  for (const [cell, name] of names.entries()) {
    if (cell === without) continue;
    const { data } = await lineOf(name, strokes);
    const [left, top] = [(cell % ACROSS) * CELL, Math.floor(cell / ACROSS) * CELL];
    for (let y = 0; y < CELL; y++)
      for (let x = 0; x < CELL; x++) {
        let sum = 0;
        for (let v = 0; v < ACROSS; v++)
          for (let u = 0; u < ACROSS; u++) sum += data[(y * ACROSS + v) * SIDE + x * ACROSS + u]!;
        page.data[(top + y) * SIDE + left + x] = Math.round(sum / (ACROSS * ACROSS));
      }
  }
  return page;
}
