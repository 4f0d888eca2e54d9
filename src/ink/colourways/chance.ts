/**
 * Numbers 0..1 from a seed: the same seed gives the same numbers in every engine.
 *
 * Source: G. Marsaglia, Xorshift RNGs, Journal of Statistical Software 8 (2003), the generator (13, 17, 5).
 */
export function chanceFrom(seed: number): () => number {
  let state = (Math.imul(seed, 0x9e3779b1) ^ 0x7f4a7c15) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 0x100000000;
  };
}
