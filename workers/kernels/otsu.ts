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
