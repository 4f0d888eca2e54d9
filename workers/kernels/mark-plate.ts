import { squaredToSegment } from './area-mask.ts';
import { type Octave, octavesOf, textureRow } from './lattice.ts';
import type { Plane } from './plane.ts';

/** A stroke on one plate, px. */
export interface Mark {
  does: 'lift' | 'lift-to' | 'lay' | 'set';
  /** 0..255 */
  tint: number;
  edge: 'clean' | 'dry' | 'stipple';
  /** x, y and radius of each point, px from pixel corners. */
  points: readonly (readonly [number, number, number])[];
  /** left, top, right, bottom with the radius. */
  box: readonly [number, number, number, number];
  seed: number;
}

export interface MarkPlateArgs {
  plate: Plane;
  out: Plane;
  /** In the order they were drawn. */
  marks: readonly Mark[];
  lattice: Int8Array;
  /** Pitch of the pixels, mm. */
  pixelMm: number;
}

/** Size of the bristles of a dry brush and of the dots of a stipple, mm. */
const BRISTLE_MM = 0.35;
const DOT_MM = 0.45;

/**
 * Draws strokes on a plate in their order, for rows `from..to`. One pass of an ink never prints over itself: laid on
 * a tint, a stroke leaves the stronger of the two.
 */
export function markPlate(args: MarkPlateArgs, from: number, to: number): void {
  const { plate, out, marks, lattice, pixelMm } = args;
  const { width } = plate;
  out.data.set(plate.data.subarray(from * width, to * width), from * width);
  const cover = new Uint8Array(width);
  const texture = new Float32Array(width);
  for (const mark of marks) {
    const [left, top, right, bottom] = mark.box;
    const first = Math.max(from, Math.floor(top));
    const last = Math.min(to, Math.ceil(bottom));
    const start = Math.max(0, Math.floor(left));
    const end = Math.min(width, Math.ceil(right));
    if (first >= last || start >= end) continue;
    const octaves = texturesOf(mark, pixelMm);
    for (let y = first; y < last; y++) {
      coverRow(mark, y, start, end, cover);
      if (octaves) {
        textureRow(lattice, octaves, y, pixelMm, texture, start, end);
        roughen(mark.edge, cover, texture, start, end);
      }
      layRow(mark, cover, out.data, y * width, start, end);
    }
  }
}

function texturesOf({ edge, seed }: Mark, pixelMm: number): Octave[] | null {
  if (edge === 'clean') return null;
  return octavesOf(edge === 'dry' ? BRISTLE_MM : DOT_MM, edge === 'dry' ? 2 : 1, seed, pixelMm);
}

/** How far each pixel of a row is covered by the stroke: 255 inside, fading over the pixel at its rim. */
function coverRow({ points }: Mark, y: number, start: number, end: number, cover: Uint8Array): void {
  cover.fill(0, start, end);
  const middle = y + 0.5;
  for (let k = 0; k < points.length; k++) {
    const [ax, ay, ar] = points[k]!;
    const [bx, by, br] = points[Math.min(k + 1, points.length - 1)]!;
    const most = Math.max(ar, br) + 1;
    if (Math.min(ay, by) - most > middle || Math.max(ay, by) + most < middle) continue;
    const left = Math.max(start, Math.floor(Math.min(ax, bx) - most));
    const right = Math.min(end, Math.ceil(Math.max(ax, bx) + most));
    const long = (bx - ax) * (bx - ax) + (by - ay) * (by - ay);
    for (let x = left; x < right; x++) {
      if (cover[x] === 255) continue;
      const along = long === 0 ? 0 : ((x + 0.5 - ax) * (bx - ax) + (middle - ay) * (by - ay)) / long;
      const radius = ar + (br - ar) * Math.min(1, Math.max(0, along));
      const away = Math.sqrt(squaredToSegment(x + 0.5, middle, ax, ay, bx, by));
      const value = Math.min(255, Math.max(0, Math.floor((radius - away + 0.5) * 255 + 0.5)));
      if (value > cover[x]!) cover[x] = value;
    }
  }
}

/** Breaks the cover up: bristles that run dry, or dots. */
function roughen(
  edge: Mark['edge'],
  cover: Uint8Array,
  texture: Float32Array,
  start: number,
  end: number,
): void {
  const [gain, bias] = edge === 'dry' ? [520, 150] : [900, -40];
  for (let x = start; x < end; x++) {
    if (cover[x] === 0) continue;
    const kept = Math.min(255, Math.max(0, Math.floor(bias + gain * texture[x]! + 0.5)));
    cover[x] = Math.floor((cover[x]! * kept + 127) / 255);
  }
}

function layRow(
  { does, tint }: Mark,
  cover: Uint8Array,
  out: Uint8Array,
  row: number,
  start: number,
  end: number,
): void {
  for (let x = start; x < end; x++) {
    const share = cover[x]!;
    if (share === 0) continue;
    const before = out[row + x]!;
    const after = reached(does, before, tint);
    out[row + x] = Math.floor((before * (255 - share) + after * share + 127) / 255);
  }
}

/** What a stroke leaves where it covers fully. */
function reached(does: Mark['does'], before: number, tint: number): number {
  if (does === 'lift') return Math.floor((before * (255 - tint) + 127) / 255);
  if (does === 'lift-to') return Math.min(before, tint);
  if (does === 'lay') return Math.max(before, tint);
  return tint;
}
