import { type Octave, textureRow } from './lattice.ts';
import type { SharedBytes } from './plane.ts';

export interface DeckleArgs {
  /** RGB of the print, 3 bytes a pixel. */
  pixels: SharedBytes;
  width: number;
  height: number;
  pixelMm: number;
  /** How far the edge runs in and out, mm. */
  deckleMm: number;
  lattice: Int8Array;
  octaves: readonly Octave[];
  /** What the sheet lies on, RGB. */
  ground: readonly [number, number, number];
  out: SharedBytes;
}

/** The edge of the sheet thins out over this much, mm. */
const SOFT_MM = 0.25;

/** Tears the edges of a print, for rows `from..to`. */
export function deckle(args: DeckleArgs, from: number, to: number): void {
  const { pixels, out, width, height, pixelMm, deckleMm, lattice, octaves, ground } = args;
  const noise = new Float32Array(width);
  const soft = Math.max(SOFT_MM, pixelMm);
  for (let y = from; y < to; y++) {
    textureRow(lattice, octaves, y, pixelMm, noise);
    const fromEnds = Math.min(y + 0.5, height - y - 0.5);
    for (let x = 0; x < width; x++) {
      const inside = Math.min(fromEnds, x + 0.5, width - x - 0.5) * pixelMm;
      const edge = deckleMm * Math.min(1, Math.max(0, 0.5 + noise[x]!));
      const paper = Math.min(1, Math.max(0, (inside - edge) / soft + 0.5));
      const at = (y * width + x) * 3;
      for (let c = 0; c < 3; c++) out[at + c] = ground[c]! + (pixels[at + c]! - ground[c]!) * paper + 0.5;
    }
  }
}
