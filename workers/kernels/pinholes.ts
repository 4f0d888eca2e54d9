import type { Plane } from './plane.ts';

export interface FindPinholesArgs {
  /** 4-connected areas of paper. */
  labels: Uint32Array;
  count: number;
  width: number;
  height: number;
  /** Holes of fewer pixels are filled. */
  smallest: number;
}

export interface Pinholes {
  /** One byte a label: 1 where the hole is filled. */
  fills: Uint8Array;
  count: number;
  pixels: number;
}

/** Areas of paper that are smaller than a size and do not touch the edge of the picture: line is all around them. */
export function findPinholes(args: FindPinholesArgs): Pinholes {
  const { labels, width, height, smallest } = args;
  const size = new Uint32Array(args.count + 1);
  for (let i = 0; i < labels.length; i++) size[labels[i]!]!++;
  for (let x = 0; x < width; x++) {
    size[labels[x]!] = 0;
    size[labels[(height - 1) * width + x]!] = 0;
  }
  for (let y = 0; y < height; y++) {
    size[labels[y * width]!] = 0;
    size[labels[y * width + width - 1]!] = 0;
  }
  const fills = new Uint8Array(args.count + 1);
  let count = 0;
  let pixels = 0;
  for (let label = 1; label <= args.count; label++) {
    if (size[label] === 0 || size[label]! >= smallest) continue;
    fills[label] = 1;
    count++;
    pixels += size[label]!;
  }
  return { fills, count, pixels };
}

export interface FillPinholesArgs {
  labels: Uint32Array;
  line: Plane;
  fills: Uint8Array;
  out: Plane;
}

/** Copies rows `from..to` with pinholes solid, and with them the soft rim that borders on nothing but them. */
export function fillPinholes(args: FillPinholesArgs, from: number, to: number): void {
  const { labels, fills } = args;
  const { width, height, data } = args.line;
  const out = args.out.data;
  const around = (x: number, y: number): boolean => {
    let filled = false;
    for (let py = Math.max(0, y - 1); py <= Math.min(height - 1, y + 1); py++)
      for (let px = Math.max(0, x - 1); px <= Math.min(width - 1, x + 1); px++) {
        const label = labels[py * width + px]!;
        if (label === 0) continue;
        if (fills[label] === 0) return false;
        filled = true;
      }
    return filled;
  };
  for (let y = from; y < to; y++)
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const value = data[i]!;
      const solid = labels[i] === 0 ? value < 255 && around(x, y) : fills[labels[i]!] === 1;
      out[i] = solid ? 255 : value;
    }
}
