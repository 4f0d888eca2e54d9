import { octavesOf, textureRow } from './lattice.ts';
import type { Plane } from './plane.ts';

export interface GrainArgs {
  plate: Plane;
  out: Plane;
  /** From `latticeOf`. */
  lattice: Int8Array;
  /** Pitch of the pixels, mm. */
  pixelMm: number;
  sizeMm: number;
  /** How far a tint may wander, 0..1 of the way to paper or solid, whichever is nearer. */
  strength: number;
  /** 0 cloudy .. 1 hard-edged. */
  hardness: number;
  /** Share of a solid that the grain opens, 0..0.15. */
  openSolids: number;
  seed: number;
}

/** Tints above this share of a solid run into the opened solid. */
const SHOULDER = 0.95;

/**
 * A mottle that keeps the mean of every flat tint, for rows `from..to`: the tint moves up and down by equal chance
 * within the room it has. Paper stays paper.
 */
export function grain(args: GrainArgs, from: number, to: number): void {
  const { lattice, pixelMm } = args;
  const { width } = args.plate;
  const plate = args.plate.data;
  const out = args.out.data;
  const octaves = octavesOf(args.sizeMm, 3, args.seed, pixelMm);
  const gain = 2.5 * (1 + 7 * args.hardness * args.hardness);
  const { middle, room } = tintTables(args.openSolids, args.strength);
  const texture = new Float32Array(width);
  for (let y = from; y < to; y++) {
    const row = y * width;
    let x = 0;
    while (x < width) {
      const start = x;
      while (x < width && room[plate[row + x]!] === 0) x++;
      for (let k = start; k < x; k++) out[row + k] = middle[plate[row + k]!]!;
      const first = x;
      while (x < width && room[plate[row + x]!] !== 0) x++;
      textureRow(lattice, octaves, y, pixelMm, texture, first, x);
      for (let k = first; k < x; k++) {
        const tint = plate[row + k]!;
        const wander = Math.min(1, Math.max(-1, texture[k]! * gain));
        out[row + k] = (middle[tint]! + room[tint]! * wander + 0.5) | 0;
      }
    }
  }
}

/** For each coverage 0..255 the mean it prints at and how far it may wander from it. */
function tintTables(openSolids: number, strength: number): { middle: Float64Array; room: Float64Array } {
  const middle = new Float64Array(256);
  const room = new Float64Array(256);
  for (let v = 0; v < 256; v++) {
    const over = Math.max(0, (v / 255 - SHOULDER) / (1 - SHOULDER));
    middle[v] = openSolids === 0 ? v : v * (1 - over) + 255 * (1 - openSolids) * over;
    room[v] = Math.min(middle[v]!, 255 - middle[v]!) * strength;
  }
  return { middle, room };
}
