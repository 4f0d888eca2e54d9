/** Sets of numbers 0..size-1 that join; the lower number stays the root. */
export function unionOf(size: number): Uint32Array {
  return Uint32Array.from({ length: size }, (_, i) => i);
}

/** The root of a set. Path halving: Tarjan & van Leeuwen 1984 (from memory). */
export function rootOf(home: Uint32Array, member: number): number {
  let at = member;
  while (home[at] !== at) {
    home[at] = home[home[at]!]!;
    at = home[at]!;
  }
  return at;
}

/** Joins two sets; returns the root of both. */
export function unite(home: Uint32Array, a: number, b: number): number {
  const rootA = rootOf(home, a);
  const rootB = rootOf(home, b);
  if (rootA < rootB) home[rootB] = rootA;
  else home[rootA] = rootB;
  return Math.min(rootA, rootB);
}
