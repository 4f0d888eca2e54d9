export interface BorderPlacesArgs {
  labels: Uint32Array;
  width: number;
  height: number;
  /** Pairs of labels, two by two, the lower first. */
  pairs: Uint32Array;
}

/**
 * For each pair of regions the pixel of their border that lies nearest to its middle, as an index; -1 where they do
 * not meet. Of equally near ones the first in reading order.
 */
export function borderPlaces({ labels, width, height, pairs }: BorderPlacesArgs): Int32Array {
  const count = pairs.length / 2;
  const size = pairs.reduce((most, label) => Math.max(most, label), 0) + 1;
  const known = new Map<number, number>();
  for (let k = 0; k < count; k++) known.set(pairs[2 * k]! * size + pairs[2 * k + 1]!, k);
  const each = (meet: (pair: number, x: number, y: number) => void) => {
    for (let y = 0; y < height; y++)
      for (let x = 0, i = y * width; x < width; x++, i++) {
        const here = labels[i]!;
        const right = x + 1 < width ? labels[i + 1]! : here;
        const below = y + 1 < height ? labels[i + width]! : here;
        for (const other of right === below ? [right] : [right, below]) {
          if (other === here || here >= size || other >= size) continue;
          const pair = known.get(here < other ? here * size + other : other * size + here);
          if (pair !== undefined) meet(pair, x, y);
        }
      }
  };
  const sums = new Float64Array(3 * count);
  each((pair, x, y) => {
    sums[3 * pair]! += x;
    sums[3 * pair + 1]! += y;
    sums[3 * pair + 2]!++;
  });
  const places = new Int32Array(count).fill(-1);
  const nearest = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  each((pair, x, y) => {
    const pixels = sums[3 * pair + 2]!;
    const d2 = (x - sums[3 * pair]! / pixels) ** 2 + (y - sums[3 * pair + 1]! / pixels) ** 2;
    if (d2 >= nearest[pair]!) return;
    nearest[pair] = d2;
    places[pair] = y * width + x;
  });
  return places;
}
