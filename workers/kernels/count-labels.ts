export interface CountLabelsArgs {
  labels: Uint32Array;
  count: number;
}

/** Pixels of every label; index = label. */
export function countLabels(args: CountLabelsArgs): Uint32Array {
  const { labels } = args;
  const pixels = new Uint32Array(args.count + 1);
  for (let i = 0; i < labels.length; i++) pixels[labels[i]!]!++;
  return pixels;
}
