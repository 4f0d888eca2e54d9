/** A lattice of values repeats after this many cells; turned and stacked lattices never line up, so no tile shows. */
export const LATTICE = 256;

/** 32 well-mixed bits of a number and a seed. Integer hash in the manner of Mueller 2012 (constants from memory). */
export function mix(value: number, seed: number): number {
  let h = (value ^ Math.imul(seed, 0x9e3779b1)) >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x45d9f3b);
  h = Math.imul(h ^ (h >>> 16), 0x45d9f3b);
  return (h ^ (h >>> 16)) >>> 0;
}

/** The seed for what differs from sheet to sheet; the first sheet keeps the seed itself. */
export function seedOfSheet(seed: number, sheet: number): number {
  return sheet === 1 ? seed : mix(sheet, seed);
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
export const PYTHAGOREAN = [
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
    const [cos, sin] = PYTHAGOREAN[(k + seed) % PYTHAGOREAN.length]!;
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

/** Positions inside a cell are whole steps of 1/65536; the fade between lattice points has 256 steps. */
const CELL = 65_536;
const FADE = Int32Array.from({ length: 256 }, (_, i) => {
  const f = i / 256;
  return Math.round(256 * f * f * (3 - 2 * f));
});

/**
 * Part of one row of a texture: the sum of its layers, about -1..1 with mean 0. Value noise with a cubic fade
 * between lattice points (Perlin 1985). Whole-number steps along the row, so that every engine and every split
 * gives the same bits.
 *
 * @param y row in px, `pixelMm` its pitch
 * @param out one number a pixel of the row; `from..to` are written
 */
export function textureRow(
  lattice: Int8Array,
  octaves: readonly Octave[],
  y: number,
  pixelMm: number,
  out: Float32Array,
  from = 0,
  to = out.length,
): void {
  out.fill(0, from, to);
  const yMm = (y + 0.5) * pixelMm;
  for (const octave of octaves) {
    const scale = octave.weight / (127 * CELL);
    const stepU = Math.round(octave.cos * octave.perMm * pixelMm * CELL);
    const stepV = Math.round(octave.sin * octave.perMm * pixelMm * CELL);
    const startU = Math.round((octave.dx - octave.sin * octave.perMm * yMm) * CELL) + (stepU >> 1);
    const startV = Math.round((octave.dy + octave.cos * octave.perMm * yMm) * CELL) + (stepV >> 1);
    let u = (startU + from * stepU) | 0;
    let v = (startV + from * stepV) | 0;
    if (Math.max(Math.abs(stepU), Math.abs(stepV)) * BROAD <= CELL) {
      broadLayer(lattice, { u, v, stepU, stepV, scale }, out, from, to);
      continue;
    }
    for (let x = from; x < to; x++) {
      const su = FADE[(u >> 8) & 255]!;
      const sv = FADE[(v >> 8) & 255]!;
      const column = (u >> 16) & 255;
      const next = (column + 1) & 255;
      const row = (v >> 8) & 0xff00;
      const below = (row + 256) & 0xff00;
      const a = lattice[row | column]!;
      const b = lattice[row | next]!;
      const c = lattice[below | column]!;
      const d = lattice[below | next]!;
      const top = a * 256 + (b - a) * su;
      const bottom = c * 256 + (d - c) * su;
      out[x]! += (top * 256 + (bottom - top) * sv) * scale;
      u = (u + stepU) | 0;
      v = (v + stepV) | 0;
    }
  }
}

/** From so many pixels to a cell on, it pays to go cell by cell. */
const BROAD = 16;

interface LayerRow {
  u: number;
  v: number;
  stepU: number;
  stepV: number;
  scale: number;
}

/** The same for a layer of broad cells: what a cell's corners say is looked up once. */
function broadLayer(lattice: Int8Array, layer: LayerRow, out: Float32Array, from: number, to: number): void {
  const { scale } = layer;
  const [stepU, stepV] = [layer.stepU | 0, layer.stepV | 0];
  let u = layer.u | 0;
  let v = layer.v | 0;
  for (let x = from; x < to; ) {
    const end = Math.min(to, x + Math.min(stepsWithin(u, stepU), stepsWithin(v, stepV)));
    const column = (u >> 16) & 255;
    const next = (column + 1) & 255;
    const row = (v >> 8) & 0xff00;
    const below = (row + 256) & 0xff00;
    const a = lattice[row | column]! * 256;
    const right = lattice[row | next]! - lattice[row | column]!;
    const c = lattice[below | column]! * 256;
    const belowRight = lattice[below | next]! - lattice[below | column]!;
    for (; x < end; x++) {
      const su = FADE[(u >> 8) & 255]!;
      const top = a + right * su;
      out[x]! += (top * 256 + (c + belowRight * su - top) * FADE[(v >> 8) & 255]!) * scale;
      u = (u + stepU) | 0;
      v = (v + stepV) | 0;
    }
  }
}

/** How many places in a row lie within the cell of the first of them. */
function stepsWithin(place: number, step: number): number {
  const part = place & (CELL - 1);
  if (step > 0) return Math.floor((CELL - 1 - part) / step) + 1;
  return step < 0 ? Math.floor(part / -step) + 1 : Number.MAX_SAFE_INTEGER;
}
