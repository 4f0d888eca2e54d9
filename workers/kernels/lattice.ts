/** A lattice of values repeats after this many cells; turned and stacked lattices never line up, so no tile shows. */
export const LATTICE = 256;

/** 32 well-mixed bits of a number and a seed. Integer hash in the manner of Mueller 2012 (constants from memory). */
export function mix(value: number, seed: number): number {
  let h = (value ^ Math.imul(seed, 0x9e3779b1)) >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x45d9f3b);
  h = Math.imul(h ^ (h >>> 16), 0x45d9f3b);
  return (h ^ (h >>> 16)) >>> 0;
}

/**
 * A shuffled lattice in which every value of -127..127 stands equally often, paired with its opposite: its mean is
 * exactly 0 and its spread symmetric.
 */
export function latticeOf(seed: number): Int8Array {
  const values = new Int8Array(LATTICE * LATTICE);
  for (let i = 0; i < values.length; i += 2) {
    const value = ((i >> 1) % 127) + 1;
    values[i] = value;
    values[i + 1] = -value;
  }
  for (let i = values.length - 1; i > 0; i--) {
    const j = mix(i, seed) % (i + 1);
    const kept = values[i]!;
    values[i] = values[j]!;
    values[j] = kept;
  }
  return values;
}

/** One layer of a texture. */
export interface Octave {
  /** Cells per mm along the layer's own axes. */
  perMm: number;
  /** Share of the sum, 0..1. */
  weight: number;
  /** Direction of the layer's first axis, a unit vector. */
  cos: number;
  sin: number;
  /** Shift of the layer in cells. */
  dx: number;
  dy: number;
}

/** Pythagorean directions: unit vectors without any rounding of sines. */
const DIRECTIONS = [
  [4 / 5, 3 / 5],
  [5 / 13, -12 / 13],
  [15 / 17, 8 / 17],
  [7 / 25, 24 / 25],
  [20 / 29, -21 / 29],
] as const;

/**
 * Layers of a texture whose largest blotches are `sizeMm` wide, each next one half the size. A layer too fine for
 * pixels of `pixelMm` fades out before it can alias, so a reduced picture shows the mean of the full one.
 */
export function octavesOf(sizeMm: number, layers: number, seed: number, pixelMm: number): Octave[] {
  const octaves: Octave[] = [];
  for (let k = 0; k < layers; k++) {
    const cellMm = sizeMm / 2 ** k;
    const [cos, sin] = DIRECTIONS[(k + seed) % DIRECTIONS.length]!;
    const resolved = Math.min(1, Math.max(0, cellMm / pixelMm / 2 - 0.5));
    if (resolved === 0) continue;
    octaves.push({
      perMm: 1 / cellMm,
      weight: (resolved * 0.6 ** k * 0.4) / (1 - 0.6 ** layers),
      cos,
      sin,
      dx: mix(2 * k, seed) / 65536,
      dy: mix(2 * k + 1, seed) / 65536,
    });
  }
  return octaves;
}

/**
 * One row of a texture: the sum of its layers, about -1..1 with mean 0. Value noise with a cubic fade between
 * lattice points (Perlin 1985). Only + - x and table look-ups, so that every engine gives the same bits.
 *
 * @param y row in px, `pixelMm` its pitch
 * @param out one number a pixel
 */
export function textureRow(
  lattice: Int8Array,
  octaves: readonly Octave[],
  y: number,
  pixelMm: number,
  out: Float32Array,
): void {
  out.fill(0);
  const mask = LATTICE - 1;
  const yMm = (y + 0.5) * pixelMm;
  for (const octave of octaves) {
    const scale = octave.weight / 127;
    const stepX = octave.cos * octave.perMm * pixelMm;
    const stepY = octave.sin * octave.perMm * pixelMm;
    const startX = octave.dx - octave.sin * octave.perMm * yMm + LATTICE;
    const startY = octave.dy + octave.cos * octave.perMm * yMm + LATTICE;
    for (let x = 0; x < out.length; x++) {
      const u = startX + (x + 0.5) * stepX;
      const v = startY + (x + 0.5) * stepY;
      const iu = Math.floor(u);
      const iv = Math.floor(v);
      const fu = u - iu;
      const fv = v - iv;
      const su = fu * fu * (3 - 2 * fu);
      const sv = fv * fv * (3 - 2 * fv);
      const row0 = (iv & mask) << 8;
      const row1 = ((iv + 1) & mask) << 8;
      const c0 = iu & mask;
      const c1 = (iu + 1) & mask;
      const a = lattice[row0 | c0]!;
      const b = lattice[row0 | c1]!;
      const c = lattice[row1 | c0]!;
      const d = lattice[row1 | c1]!;
      const top = a + (b - a) * su;
      out[x]! += (top + (c + (d - c) * su - top) * sv) * scale;
    }
  }
}
