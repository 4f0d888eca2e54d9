import { mix } from './lattice.ts';
import { TILE } from './tile-row.ts';

/** Kinds of grain whose pattern stands in a tile. */
export type TileKind = 'cloud' | 'speckle' | 'fibre' | 'stipple';

/** Cells from one blotch to the next, by kind: where the power spectrum of the tile peaks (measured). */
export const CELLS_A_PERIOD: Readonly<Record<TileKind, number>> = {
  cloud: 9.1,
  speckle: 7.2,
  fibre: 7.2,
  stipple: 8.3,
};

const PIXELS = TILE * TILE;
const WRAP = TILE - 1;
/** Standard deviation that a filtered tile is brought to, levels. */
export const SPREAD = 40;

/**
 * The pattern of a kind of grain as levels 0..255, its middle at 128: low where ink gathers. It repeats without a
 * seam. The same on every machine and for every job; where it lies on the sheet differs.
 */
export function grainTile(kind: TileKind): Uint8Array<SharedArrayBuffer> {
  if (kind === 'stipple') return stipple();
  const field = new Float64Array(PIXELS);
  if (kind === 'cloud') for (let i = 0; i < PIXELS; i++) field[i] = chance(i, 11) - 0.5;
  if (kind === 'speckle') scatter(field);
  if (kind === 'fibre') strokes(field);
  if (kind === 'cloud') return levelsOf(bandPass(field, 2, 2, 3));
  const narrow = bandPass(field, 2, 1, 3);
  return levelsOf(kind === 'fibre' ? bandPass(narrow, 2, 1, 3) : narrow);
}

const chance = (n: number, seed: number) => mix(n, seed) / 0x100000000;

/** One speck to a square of this many cells, so that they stand about evenly. */
const SPECK_CELLS = 4;

/** Single specks, some dark, some light, of any strength. */
function scatter(field: Float64Array): void {
  const side = TILE / SPECK_CELLS;
  for (let k = 0; k < side * side; k++) {
    const x = (k % side) * SPECK_CELLS + (mix(k, 21) % SPECK_CELLS);
    const y = Math.floor(k / side) * SPECK_CELLS + (mix(k, 25) % SPECK_CELLS);
    const strength = 0.1 + chance(k, 22) * chance(k, 23) * chance(k, 26);
    field[y * TILE + x] = chance(k, 24) < 0.5 ? -strength : strength;
  }
}

/** One stroke to a square of this many cells. */
const STROKE_CELLS = 11;

/** Bent strokes in all directions. */
function strokes(field: Float64Array): void {
  const side = TILE / STROKE_CELLS;
  for (let k = 0; k < side * side; k++) {
    let x = ((k % side) + chance(k, 31)) * STROKE_CELLS;
    let y = (Math.floor(k / side) + chance(k, 32)) * STROKE_CELLS;
    let dx = chance(k, 33) - 0.5;
    let dy = chance(k, 34) - 0.5;
    const bend = (chance(k, 35) - 0.5) * 0.05;
    const ink = chance(k, 36) < 0.5 ? -1 : 1;
    const length = 30 + 40 * chance(k, 37);
    for (let step = 0; step < length; step++) {
      const norm = Math.sqrt(dx * dx + dy * dy) || 1;
      [dx, dy] = [(dx - dy * bend) / norm, (dy + dx * bend) / norm];
      x += dx;
      y += dy;
      field[(Math.floor(y) & WRAP) * TILE + (Math.floor(x) & WRAP)] = ink;
    }
  }
}

/** What lies between two sizes of blur: the difference of two near-Gaussians. */
function bandPass(field: Float64Array, fineTimes: number, reach: number, times: number): Float64Array {
  const fine = blurred(field, 1, fineTimes);
  const coarse = blurred(fine, reach, times);
  return fine.map((value, i) => value - coarse[i]!);
}

/** Running means of `2 * reach + 1` cells, both ways, `times` over; the tile has no edge. */
function blurred(field: Float64Array, reach: number, times: number): Float64Array {
  let from = field;
  for (let pass = 0; pass < times; pass++)
    from = blurredOnce(blurredOnce(from, 1, TILE, reach), TILE, 1, reach);
  return from;
}

function blurredOnce(field: Float64Array, step: number, stride: number, reach: number): Float64Array {
  const out = new Float64Array(PIXELS);
  for (let line = 0; line < TILE; line++)
    for (let k = 0; k < TILE; k++) {
      let sum = 0;
      for (let d = -reach; d <= reach; d++) sum += field[line * stride + ((k + d) & WRAP) * step]!;
      out[line * stride + k * step] = sum / (2 * reach + 1);
    }
  return out;
}

function levelsOf(field: Float64Array): Uint8Array<SharedArrayBuffer> {
  let sum = 0;
  let squares = 0;
  for (const value of field) {
    sum += value;
    squares += value * value;
  }
  const mean = sum / PIXELS;
  const spread = Math.sqrt(squares / PIXELS - mean * mean);
  const levels = new Uint8Array(new SharedArrayBuffer(PIXELS));
  for (let i = 0; i < PIXELS; i++)
    levels[i] = Math.min(255, Math.max(0, 128 + ((field[i]! - mean) * SPREAD) / spread)) + 0.5;
  return levels;
}

/** Least distance of two dots, cells. */
const APART = 6;

/** Distance to the nearest of dots that keep apart and leave no room for one more, against the mean around. */
function stipple(): Uint8Array<SharedArrayBuffer> {
  const side = Math.floor(TILE / 4);
  const dots: (readonly [number, number] | null)[] = new Array(side * side).fill(null);
  const at = (column: number, row: number) => (row & (side - 1)) * side + (column & (side - 1));
  const far = (a: number) => {
    const around = Math.abs(a);
    return Math.min(around, TILE - around);
  };
  const free = (x: number, y: number) => {
    const [column, row] = [x >> 2, y >> 2];
    for (let j = -2; j <= 2; j++)
      for (let i = -2; i <= 2; i++) {
        const dot = dots[at(column + i, row + j)];
        if (dot && far(dot[0] - x) ** 2 + far(dot[1] - y) ** 2 < APART * APART) return false;
      }
    return true;
  };
  for (let k = 0; k < 120_000; k++) {
    const [x, y] = [chance(k, 41) * TILE, chance(k, 42) * TILE];
    if (free(x, y)) dots[at(x >> 2, y >> 2)] = [x, y];
  }
  const away = new Float64Array(PIXELS).fill(APART * APART);
  for (const dot of dots) if (dot) stamp(away, dot[0], dot[1]);
  const near = away.map(Math.sqrt);
  const around = blurred(near, 4, 2);
  return levelsOf(near.map((value, i) => value - around[i]!));
}

function stamp(near: Float64Array, x: number, y: number): void {
  for (let row = Math.ceil(y - APART); row <= y + APART; row++)
    for (let column = Math.ceil(x - APART); column <= x + APART; column++) {
      const at = (row & WRAP) * TILE + (column & WRAP);
      const away = (row - y) * (row - y) + (column - x) * (column - x);
      if (away < near[at]!) near[at] = away;
    }
}
