/**
 * The level that parts a histogram best in two: values up to it are one class, values above it the other.
 * The first of equal levels. Method: N. Otsu, "A threshold selection method from gray-level histograms",
 * IEEE Trans. SMC 9(1), 1979.
 *
 * @param counts 256 pixel counts
 * @returns 0..254; 0 for an empty or one-valued histogram
 */
export function otsu(counts: ArrayLike<number>): number {
  let total = 0;
  let sum = 0;
  for (let v = 0; v < 256; v++) {
    total += counts[v]!;
    sum += v * counts[v]!;
  }
  let below = 0;
  let sumBelow = 0;
  let best = 0;
  let level = 0;
  for (let v = 0; v < 255; v++) {
    below += counts[v]!;
    sumBelow += v * counts[v]!;
    if (below === 0 || below === total) continue;
    const gap = sumBelow / below - (sum - sumBelow) / (total - below);
    const between = (below / total) * ((total - below) / total) * gap * gap;
    if (between > best) {
      best = between;
      level = v;
    }
  }
  return level;
}

/** The two classes of a histogram: values up to a level, and values above it. */
export interface Parting {
  /** Mean of each class; the level itself for an empty one. */
  below: number;
  above: number;
  /** Variance between the classes over the whole variance, 0..1: how well the level parts them (Otsu's eta). */
  clarity: number;
}

/** How a level parts a histogram of 256 counts. */
export function partingAt(counts: ArrayLike<number>, level: number): Parting {
  const pixels = [0, 0];
  const sums = [0, 0];
  let squares = 0;
  for (let v = 0; v < 256; v++) {
    const side = v > level ? 1 : 0;
    pixels[side]! += counts[v]!;
    sums[side]! += v * counts[v]!;
    squares += v * v * counts[v]!;
  }
  const total = pixels[0]! + pixels[1]!;
  const whole = (sums[0]! + sums[1]!) / total;
  const variance = squares / total - whole * whole;
  const mean = (side: number) => (pixels[side] === 0 ? level : sums[side]! / pixels[side]!);
  const [below, above] = [mean(0), mean(1)];
  const between = (pixels[0]! / total) * (pixels[1]! / total) * (above - below) ** 2;
  return { below, above, clarity: variance > 0 ? between / variance : 0 };
}
