import { CELLS_A_PERIOD, type TileKind } from './grain-tile.ts';
import { LATTICE, mix, type Octave, octavesOf, PYTHAGOREAN, textureRow } from './lattice.ts';
import { TILE, type TilePlace, tileRow } from './tile-row.ts';

/** Where a grain lies on a plate and what it is made of. */
export type GrainField =
  | { of: 'layers'; lattice: Int8Array; octaves: readonly Octave[]; gain: number }
  | { of: 'tile'; lattice: Int8Array; tile: Uint8Array; place: TilePlace };

/** A mottle: layers of lattice noise, the largest blotches `sizeMm` wide. `hardness` is 0..1. */
export function mottleField(
  lattice: Int8Array,
  sizeMm: number,
  hardness: number,
  seed: number,
  pixelMm: number,
): GrainField {
  return {
    of: 'layers',
    lattice,
    octaves: octavesOf(sizeMm, 3, seed, pixelMm),
    gain: 2.5 * (1 + 7 * hardness * hardness),
  };
}

/** A tile of `kind` laid so that its blotches stand `sizeMm` from one another. */
export function tileField(
  lattice: Int8Array,
  tile: Uint8Array,
  kind: TileKind,
  sizeMm: number,
  seed: number,
): GrainField {
  const cells = CELLS_A_PERIOD[kind];
  const [cos, sin] = PYTHAGOREAN[mix(7, seed) % PYTHAGOREAN.length]!;
  const within = (n: number, range: number) => (mix(n, seed) / 0x100000000) * range;
  const place = {
    perMm: cells / sizeMm,
    cos,
    sin,
    dx: within(1, TILE),
    dy: within(2, TILE),
    bend: BEND_PERIODS * cells,
    bendPerMm: 1 / (BEND_EVERY * sizeMm),
    bendX: within(3, LATTICE),
    bendY: within(4, LATTICE),
  };
  return { of: 'tile', lattice, tile, place };
}

/** A tile is bent by up to so many periods, and otherwise after so many. */
const BEND_PERIODS = 1.5;
const BEND_EVERY = 24;

/**
 * Part of one row of a grain as levels 0..255: low where ink gathers for tiles, high for a mottle.
 *
 * @param scratch as long as the row
 */
export function grainRow(
  field: GrainField,
  y: number,
  pixelMm: number,
  scratch: Float32Array,
  out: Uint8Array,
  from: number,
  to: number,
): void {
  if (field.of === 'tile') {
    tileRow(field.tile, field.place, field.lattice, y, pixelMm, out, from, to);
    return;
  }
  textureRow(field.lattice, field.octaves, y, pixelMm, scratch, from, to);
  for (let x = from; x < to; x++) out[x] = 128.5 + 127 * Math.min(1, Math.max(-1, scratch[x]! * field.gain));
}

/** Samples along the longer side of a sheet. */
const SAMPLES = 400;

/** How often each level stands on a sheet of `mm`: 256 shares that add up to 1. */
export function levelShares(field: GrainField, [widthMm, heightMm]: readonly [number, number]): Float64Array {
  const pitch = Math.max(widthMm, heightMm) / SAMPLES;
  const columns = Math.max(1, Math.round(widthMm / pitch));
  const rows = Math.max(1, Math.round(heightMm / pitch));
  const counts = new Float64Array(256);
  const row = new Uint8Array(columns);
  const scratch = new Float32Array(columns);
  for (let y = 0; y < rows; y++) {
    grainRow(field, y, pitch, scratch, row, 0, columns);
    for (let x = 0; x < columns; x++) counts[row[x]!]!++;
  }
  return counts.map((count) => count / (rows * columns));
}
