import { FAR } from './distance.ts';

export interface GrowArgs {
  /** 0 where nothing is labelled yet. */
  labels: Uint32Array;
  /** What a label is called in the output, 0 for 0. */
  names: Uint32Array;
  /** Distance of each pixel to the nearest labelled one of its column, from `columnDistance`. */
  columns: Uint16Array;
  width: number;
  height: number;
  /** Squared reach in px2. */
  reach2: number;
  out: Uint32Array;
}

/**
 * Gives every unlabelled pixel of rows `from..to` the name of the nearest labelled pixel within reach, exactly;
 * of equally near ones the lowest name. Along a row only places closer than the best so far are looked at.
 */
export function grow(args: GrowArgs, from: number, to: number): void {
  const { labels, names, columns, width, height, out } = args;
  const reach2 = Math.floor(args.reach2);
  const last = width * height;
  for (let y = from; y < to; y++) {
    const row = y * width;
    const end = row + width;
    for (let i = row; i < end; i++) {
      const own = labels[i]!;
      if (own !== 0) {
        out[i] = names[own]!;
        continue;
      }
      let best = reach2;
      let label = 0;
      for (let dx = 0, dx2 = 0; dx2 <= best; dx++, dx2 = dx * dx)
        for (let at = i - dx; ; at = i + dx) {
          const g = at >= row && at < end ? columns[at]! : FAR;
          const d2 = g * g + dx2;
          if (d2 <= best) {
            const step = g * width;
            const above = at >= step ? names[labels[at - step]!]! : 0;
            const below = at + step < last ? names[labels[at + step]!]! : 0;
            const found = lower(above, below);
            label = d2 < best ? found : lower(label, found);
            best = d2;
          }
          if (at === i + dx) break;
        }
      out[i] = label;
    }
  }
}

/** The lower of two labels, 0 standing for none. */
function lower(a: number, b: number): number {
  if (a === 0) return b;
  if (b === 0) return a;
  return Math.min(a, b);
}
