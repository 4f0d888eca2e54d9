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

/**
 * Neighbours by shared border. Length by the Cauchy-Crofton formula over four directions: pi/8 times the sum of
 * crossings along rows and columns and, over sqrt 2, along both diagonals (at most about 5 % off).
 */
export function borders(args: BordersArgs): Borders {
  const { labels, width, height, count } = args;
  const lengths = new Map<number, number>();
  const size = count + 1;
  const straight = 0.39269908169872414;
  const slanted = straight * Math.SQRT1_2;
  const cross = (p: number, q: number, length: number) => {
    if (p === 0 || q === 0) return;
    const key = p < q ? p * size + q : q * size + p;
    lengths.set(key, (lengths.get(key) ?? 0) + length);
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
  const keys = [...lengths.keys()].sort((p, q) => p - q);
  return {
    a: Uint32Array.from(keys, (key) => Math.floor(key / size)),
    b: Uint32Array.from(keys, (key) => key % size),
    length: Float64Array.from(keys, (key) => lengths.get(key)!),
  };
}
