/** The same bytes four at a time; null where they do not begin on a word. */
export function wordsOf(data: Uint8Array): Uint32Array | null {
  return data.byteOffset % 4 === 0 ? new Uint32Array(data.buffer, data.byteOffset, data.length >> 2) : null;
}

/** The next place at which another byte may stand: past pixel `i` and, by whole words, past its equals. */
export function pastEqual(data: Uint8Array, words: Uint32Array | null, i: number, end: number): number {
  if (words === null || (i & 3) !== 0) return i + 1;
  const same = Math.imul(data[i]!, 0x01010101) >>> 0;
  let at = i;
  while (at + 4 <= end && words[at >> 2] === same) at += 4;
  return at === i ? i + 1 : at;
}
