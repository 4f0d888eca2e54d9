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
  const { labels, names, width, out } = args;
  for (let y = from; y < to; y++)
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const own = labels[i]!;
      out[i] = own !== 0 ? names[own]! : nearestLabel(args, x, y);
    }
}

function nearestLabel(args: GrowArgs, x: number, y: number): number {
  const { labels, names, columns, width, height, reach2 } = args;
  const row = y * width;
  let best = reach2;
  let label = 0;
  for (let dx = 0; dx * dx <= best; dx++)
    for (let side = dx === 0 ? 1 : -1; side <= 1; side += 2) {
      const at = x + side * dx;
      if (at < 0 || at >= width) continue;
      const g = columns[row + at]!;
      if (g === FAR) continue;
      const d2 = g * g + dx * dx;
      if (d2 > best) continue;
      const above = y - g >= 0 ? names[labels[row + at - g * width]!]! : 0;
      const below = y + g < height ? names[labels[row + at + g * width]!]! : 0;
      const found = lower(above, below);
      label = d2 < best ? found : lower(label, found);
      best = d2;
    }
  return label;
}

/** The lower of two labels, 0 standing for none. */
function lower(a: number, b: number): number {
  if (a === 0) return b;
  if (b === 0) return a;
  return Math.min(a, b);
}
