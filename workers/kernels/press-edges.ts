import { type Octave, textureRow } from './lattice.ts';
import type { Plane } from './plane.ts';

export interface PressEdgesArgs {
  plate: Plane;
  out: Plane;
  /** Share of ink about each pixel, from `inkShare`, with the reach of each fault; null for none. */
  squeeze: { share: Plane; take: number } | null;
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
  const { plate, out, squeeze, flooding, lattice, octaves, pixelMm } = args;
  const { width } = plate;
  const where = new Float32Array(width);
  const kept = squeeze ? rimTable(squeeze.take) : null;
  for (let y = from; y < to; y++) {
    const row = y * width;
    if (flooding) textureRow(lattice, octaves, y, pixelMm, where);
    for (let x = 0, i = row; x < width; x++, i++) {
      let value = plate.data[i]!;
      if (kept && value !== 0) value = value * kept[squeeze!.share.data[i]!]!;
      if (flooding) {
        const reached = flooding.share.data[i]! / 127.5 - 1 + flooding.give * (0.5 + 2.2 * where[x]!);
        if (reached > 0 && flooding.share.data[i]! > 0)
          value = Math.max(value, 255 * Math.min(1, reached * 4) * Math.min(1, flooding.share.data[i]! / 64));
      }
      out.data[i] = value + 0.5;
    }
  }
}

/** Share of ink kept for each share of ink about a pixel. */
function rimTable(take: number): Float32Array {
  return Float32Array.from({ length: 256 }, (_, share) => {
    if (share < RIM) return 1;
    if (share < INNER) return 1 - take * Math.min(1, (share - RIM) / 30);
    return 1 - take * (1 - (0.5 * (share - INNER)) / (255 - INNER));
  });
}
