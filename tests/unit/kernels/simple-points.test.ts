import { describe, expect, it } from 'vitest';
import { AROUND, LINE_PIECES, PAPER_PIECES } from '../../../workers/kernels/simple-points.ts';

/** Pieces of the set bits on a board of three by three without its middle, by flooding. */
function flooded(pattern: number, neighbours: 4 | 8): number[][] {
  const near = (a: number, b: number) => {
    const [dx, dy] = [Math.abs(AROUND[a]![0] - AROUND[b]![0]), Math.abs(AROUND[a]![1] - AROUND[b]![1])];
    return neighbours === 8 ? Math.max(dx, dy) === 1 : dx + dy === 1;
  };
  const open = new Set([0, 1, 2, 3, 4, 5, 6, 7].filter((bit) => ((pattern >> bit) & 1) === 1));
  const found: number[][] = [];
  while (open.size > 0) {
    const piece = [[...open][0]!];
    open.delete(piece[0]!);
    for (const bit of piece)
      for (const next of [...open])
        if (near(bit, next)) {
          open.delete(next);
          piece.push(next);
        }
    found.push(piece);
  }
  return found;
}

const patterns = Array.from({ length: 256 }, (_, pattern) => pattern);
const hasSide = (piece: number[]) => piece.some((bit) => bit % 2 === 0);

describe('around a pixel', () => {
  it('pieces of line are what flooding over eight neighbours finds', () => {
    expect([...LINE_PIECES]).toEqual(patterns.map((pattern) => flooded(pattern, 8).length));
  });

  it('pieces of paper are what flooding over four neighbours finds, of those at a side', () => {
    expect([...PAPER_PIECES]).toEqual(patterns.map((pattern) => flooded(pattern, 4).filter(hasSide).length));
  });
});
