export interface HistogramArgs {
  data: Uint8Array;
}

/** Counts of every byte value, 256 of them. */
export function histogram(args: HistogramArgs): Uint32Array {
  const { data } = args;
  const counts = new Uint32Array(256);
  for (let i = 0; i < data.length; i++) counts[data[i]!]!++;
  return counts;
}
