/** The eight neighbours of a pixel clockwise from the north, as bits 0..7 of a pattern: x and y steps. */
export const AROUND = [
  [0, -1],
  [1, -1],
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
  [-1, 0],
  [-1, -1],
] as const;

/** How many pieces the set bits of a pattern make, going round: corners join sides, sides join sides by corners. */
function pieces(pattern: number, neighbours: 4 | 8): number {
  const has = (bit: number) => ((pattern >> (bit & 7)) & 1) === 1;
  let count = 0;
  for (let side = 0; side < 8; side += 2) {
    const next = has(side + 2);
    if (neighbours === 4 && has(side) && !(has(side + 1) && next)) count++;
    if (neighbours === 8 && !has(side) && (has(side + 1) || next)) count++;
  }
  if (count > 0) return count;
  return neighbours === 4 ? (pattern === 255 ? 1 : 0) : pattern === 0 ? 0 : 1;
}

/**
 * `LINE_PIECES[pattern]`: how many 8-connected pieces of line lie around a pixel whose line neighbours are the
 * set bits. `PAPER_PIECES[pattern]`: how many 4-connected pieces of paper that touch a side of the pixel, for the
 * set bits being paper. A pixel may change sides, and no line or paper parts, joins, comes or goes, where both are
 * 1: it is simple. Rosenfeld, "Connectivity in digital pictures", 1970; Yokoi, Toriwaki & Fukumura 1975 (both
 * from memory).
 */
export const LINE_PIECES = Uint8Array.from({ length: 256 }, (_, pattern) => pieces(pattern, 8));
export const PAPER_PIECES = Uint8Array.from({ length: 256 }, (_, pattern) => pieces(pattern, 4));
