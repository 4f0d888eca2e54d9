/** A reproducible stream of numbers 0..1 (mulberry32, Tommy Ettinger, public domain). */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let h = state;
    h = Math.imul(h ^ (h >>> 15), h | 1);
    h ^= h + Math.imul(h ^ (h >>> 7), h | 61);
    return ((h ^ (h >>> 14)) >>> 0) / 0x100000000;
  };
}

/** A list in another order, the same for the same seed. */
export function shuffled<Item>(items: readonly Item[], seed: number): Item[] {
  const random = randomOf(seed);
  const list = [...items];
  for (let i = list.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [list[i], list[j]] = [list[j]!, list[i]!];
  }
  return list;
}
