import { type Octave, textureRow } from './lattice.ts';
import type { Plane } from './plane.ts';

export interface PressEdgesArgs {
  plate: Plane;
  out: Plane;
  /** Share of ink about each pixel, from `inkShare`, with the reach of each fault; null for none. */
  squeeze: { share: Plane; rims: Uint8Array } | null;
  flooding: { share: Plane; give: number } | null;
  /** Where ink creeps out, and where it does not. */
  lattice: Int8Array;
  octaves: readonly Octave[];
  pixelMm: number;
}

/** Below this share of ink (bytes) about it a pixel lies on the rim; up to the next one it is paler; then even. */
const RIM = 170;
const INNER = 250;

/** Darkens rims and swells edges, for rows `from..to`. */
export function pressEdges(args: PressEdgesArgs, from: number, to: number): void {
  const { plate, out, squeeze, flooding } = args;
  const { width } = plate;
  const rims = squeeze?.rims ?? null;
  const swell = flooding ? swelling(args, flooding) : null;
  for (let y = from; y < to; y++) {
    const row = y * width;
    const ink = plate.data.subarray(row, row + width);
    const to8 = out.data.subarray(row, row + width);
    if (rims) pressRow(ink, squeeze!.share.data.subarray(row, row + width), rims, to8);
    else to8.set(ink);
    swell?.(y, to8);
  }
}

function pressRow(ink: Uint8Array, share: Uint8Array, rims: Uint8Array, to8: Uint8Array): void {
  for (let x = 0; x < ink.length; x++) to8[x] = rims[(share[x]! << 8) | ink[x]!]!;
}

/** A place where so many pixels in a row need no texture is passed over. */
const GAP = 24;

/**
 * Lays creeping ink over a row that stands in `to8`. Texture is made only where it decides: too little ink about a
 * pixel never reaches it, and enough always does, whatever the texture says.
 */
function swelling(
  { plate, lattice, octaves, pixelMm }: PressEdgesArgs,
  { share, give }: NonNullable<PressEdgesArgs['flooding']>,
): (y: number, to8: Uint8Array) => void {
  const { width } = plate;
  const most = octaves.reduce((sum, { weight }) => sum + weight, 0) + 0.001;
  const nearness = Float64Array.from({ length: 256 }, (_, ink) => ink / 127.5 - 1);
  const reachedAt = (ink: number, texture: number) => nearness[ink]! + give * (0.5 + 2.2 * texture);
  const fading = Float64Array.from({ length: 256 }, (_, ink) => Math.min(1, ink / 64));
  const full = Uint8Array.from(fading, (share) => 255 * share + 0.5);
  const state = Uint8Array.from({ length: 256 }, (_, ink) => {
    if (ink === 0 || reachedAt(ink, most) <= 0) return NEVER;
    return reachedAt(ink, -most) * 4 >= 1 ? ALWAYS : BY_TEXTURE;
  });
  const where = new Float32Array(width);
  return (y, to8) => {
    const about = share.data.subarray(y * width, (y + 1) * width);
    for (let x = 0; x < width; x++) {
      const is = state[about[x]!]!;
      if (is === NEVER) continue;
      if (is === ALWAYS) {
        if (full[about[x]!]! > to8[x]!) to8[x] = full[about[x]!]!;
        continue;
      }
      const end = endOfSpan(state, about, x);
      textureRow(lattice, octaves, y, pixelMm, where, x, end);
      for (; x < end; x++) {
        const ink = about[x]!;
        const reached = nearness[ink]! + give * (0.5 + 2.2 * where[x]!);
        if (ink === 0 || reached <= 0) continue;
        const value = (255 * Math.min(1, reached * 4) * fading[ink]! + 0.5) | 0;
        if (value > to8[x]!) to8[x] = value;
      }
      x--;
    }
  };
}

const [NEVER, ALWAYS, BY_TEXTURE] = [0, 1, 2] as const;

/** Where a run of pixels that need texture ends, small gaps included. */
function endOfSpan(state: Uint8Array, about: Uint8Array, from: number): number {
  let end = from + 1;
  for (let x = end; x < about.length && x < end + GAP; x++) if (state[about[x]!] === BY_TEXTURE) end = x + 1;
  return end;
}

/**
 * What a rim leaves of ink, by share of ink about a pixel times 256 plus coverage.
 *
 * @param take share of the ink that the line inside the rim loses at most, 0..1
 */
export function rimTable(take: number): Uint8Array {
  const kept = keptTable(take);
  const printed = new Uint8Array(256 * 256);
  for (let share = 0; share < 256; share++)
    for (let ink = 0; ink < 256; ink++) printed[(share << 8) | ink] = (ink * kept[share]! + 0.5) | 0;
  return printed;
}

function keptTable(take: number): Float32Array {
  return Float32Array.from({ length: 256 }, (_, share) => {
    if (share < RIM) return 1;
    if (share < INNER) return 1 - take * Math.min(1, (share - RIM) / 30);
    return 1 - take * (1 - (0.5 * (share - INNER)) / (255 - INNER));
  });
}
