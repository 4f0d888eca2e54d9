/** No region around it: the frame, or nothing at all. */
const OUTSIDE = 0;

interface Neighbours {
  a: ArrayLike<number>;
  b: ArrayLike<number>;
}

/**
 * Which region wholly surrounds each: the last one that every way from the frame to it leads through, which is its
 * dominator among neighbours. In a graph without directions those are the tops of the blocks it lies in: Tarjan,
 * "Depth-first search and linear graph algorithms", 1972.
 *
 * @param count places 1..count
 * @param neighbours pairs of places that touch
 * @param atFrame places that reach the frame
 * @returns the place around each, 0 for none; index = place
 */
export function surroundings(count: number, neighbours: Neighbours, atFrame: Iterable<number>): Uint32Array {
  const next = adjacency(count, neighbours, atFrame);
  const around = new Uint32Array(count + 1);
  const found = new Uint32Array(count + 1);
  const low = new Uint32Array(count + 1);
  const at = new Uint32Array(count + 1);
  const parent = new Uint32Array(count + 1);
  const block: number[] = [];
  const path = [OUTSIDE];
  let steps = 1;
  found[OUTSIDE] = low[OUTSIDE] = steps;
  while (path.length > 0) {
    const here = path[path.length - 1]!;
    const way = next[here]![at[here]!++];
    if (way !== undefined) {
      if (found[way] === 0) {
        found[way] = low[way] = ++steps;
        parent[way] = here;
        path.push(way);
        block.push(way);
      } else if (way !== parent[here]) low[here] = Math.min(low[here]!, found[way]!);
      continue;
    }
    path.pop();
    if (path.length === 0) break;
    const before = parent[here]!;
    low[before] = Math.min(low[before]!, low[here]!);
    if (low[here]! < found[before]!) continue;
    for (let inside = -1; inside !== here; ) {
      inside = block.pop()!;
      around[inside] = before;
    }
  }
  return around;
}

function adjacency(count: number, { a, b }: Neighbours, atFrame: Iterable<number>): number[][] {
  const next: number[][] = Array.from({ length: count + 1 }, () => []);
  const touch = (p: number, q: number) => {
    next[p]!.push(q);
    next[q]!.push(p);
  };
  for (const place of atFrame) touch(OUTSIDE, place);
  for (let k = 0; k < a.length; k++) touch(a[k]!, b[k]!);
  return next;
}
