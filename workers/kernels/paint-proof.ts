import type { Plane, SharedBytes } from './plane.ts';

/** What every proof is painted with, whatever its colours come from. */
export interface PaintArgs {
  /** In print order. */
  plates: Plane[];
  /** Lightness the sheet adds or takes, bytes around 128. */
  texture: Plane;
  /** Share by which the full swing of the texture changes the light that comes back, 0..1. */
  depth: number;
  /** XYZ D50 to linear screen red, green, blue: 9 numbers, row by row. */
  toScreen: readonly number[];
  /** Screen bytes for linear light 0..1 in equal steps. */
  encoding: Uint8Array;
  /** RGB, 3 bytes a pixel. */
  out: SharedBytes;
}

/** Sets `root` to the square roots of X, Y, Z that one coverage (0..255) per plate gives. */
export type RootXyzOf = (coverage: Int16Array, root: Float64Array) => void;

/** Paints rows `from..to`. The colour is asked for only where a coverage differs from the pixel before. */
export function paintProof(args: PaintArgs, rootXyzOf: RootXyzOf, from: number, to: number): void {
  const { encoding, out, texture, toScreen: m } = args;
  const inks = args.plates.map((plate) => plate.data);
  const last = encoding.length - 1;
  const swing = args.depth / 128;
  const coverage = new Int16Array(inks.length).fill(-1);
  const root = new Float64Array(3);
  let r = 0;
  let g = 0;
  let b = 0;
  for (let i = from * texture.width; i < to * texture.width; i++) {
    let same = true;
    for (let k = 0; k < inks.length; k++) {
      const value = inks[k]![i]!;
      if (value === coverage[k]) continue;
      coverage[k] = value;
      same = false;
    }
    if (!same) {
      rootXyzOf(coverage, root);
      const x = root[0]! * root[0]!;
      const y = root[1]! * root[1]!;
      const z = root[2]! * root[2]!;
      r = (m[0]! * x + m[1]! * y + m[2]! * z) * last;
      g = (m[3]! * x + m[4]! * y + m[5]! * z) * last;
      b = (m[6]! * x + m[7]! * y + m[8]! * z) * last;
    }
    const light = 1 + (texture.data[i]! - 128) * swing;
    const o = i * 3;
    out[o] = encoding[step(r * light, last)]!;
    out[o + 1] = encoding[step(g * light, last)]!;
    out[o + 2] = encoding[step(b * light, last)]!;
  }
}

function step(value: number, last: number): number {
  const rounded = (value + 0.5) | 0;
  return rounded < 0 ? 0 : Math.min(rounded, last);
}
