export interface BordersArgs {
  labels: Uint32Array;
  width: number;
  height: number;
  count: number;
}

/** Which regions touch: three columns of equal length, a < b. */
export interface Borders {
  a: Uint32Array;
  b: Uint32Array;
  /** Length of the shared border, px. */
  length: Float64Array;
}

/** pi / 8 */
const EIGHTH_TURN = 0.39269908169872414;

/**
 * Neighbours by shared border; regions that only meet in a point are none. Length by the Cauchy-Crofton formula over
 * four directions: pi/8 times the sum of crossings along rows and columns and, over sqrt 2, along both diagonals (at
 * most about 5 % off).
 */
export function borders(args: BordersArgs): Borders {
  const { labels, width, height, count } = args;
  const size = count + 1;
  const straight = new Map<number, number>();
  const slanted = new Map<number, number>();
  const cross = (p: number, q: number, crossings: Map<number, number>) => {
    if (p === 0 || q === 0) return;
    const key = p < q ? p * size + q : q * size + p;
    crossings.set(key, (crossings.get(key) ?? 0) + 1);
  };
  for (let y = 0; y < height; y++)
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const here = labels[i]!;
      const right = x + 1 < width ? labels[i + 1]! : here;
      if (right !== here) cross(here, right, straight);
      if (y + 1 === height) continue;
      const below = labels[i + width]!;
      if (below !== here) cross(here, below, straight);
      if (x + 1 === width) continue;
      const diagonal = labels[i + width + 1]!;
      if (diagonal !== here) cross(here, diagonal, slanted);
      if (below !== right) cross(below, right, slanted);
    }
  const keys = [...straight.keys()].sort((p, q) => p - q);
  return {
    a: Uint32Array.from(keys, (key) => Math.floor(key / size)),
    b: Uint32Array.from(keys, (key) => key % size),
    length: Float64Array.from(
      keys,
      (key) => EIGHTH_TURN * (straight.get(key)! + (slanted.get(key) ?? 0) * Math.SQRT1_2),
    ),
  };
}
