export interface CountLabelsArgs {
  labels: Uint32Array;
  count: number;
}

/** Pixels of every label; index = label. */
export function countLabels(args: CountLabelsArgs): Uint32Array {
  const { labels } = args;
  const pixels = new Uint32Array(args.count + 1);
  for (let i = 0; i < labels.length; ) {
    const start = i;
    const label = labels[i]!;
    while (i < labels.length && labels[i] === label) i++;
    pixels[label]! += i - start;
  }
  return pixels;
}
