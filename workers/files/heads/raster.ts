/** What the samples of a raster file mean. */
export type Colour = 'grey' | 'rgb' | 'cmyk';

/** EXIF orientation: how the stored picture must be turned to stand upright; 1 as stored. */
export type Turn = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/** Pixels per inch. */
export interface Ppi {
  x: number;
  y: number;
}

/** The header of a raster file, as stored (before any turn). */
export interface RasterHead {
  format: 'png' | 'jpeg' | 'webp' | 'tiff';
  width: number;
  height: number;
  colour: Colour;
  /** Whether it decodes with straight alpha behind its colours. */
  alpha: boolean;
  /** Stored ppi along the stored axes; null where the file declares none. */
  ppi: Ppi | null;
  turn: Turn;
  /** Encoding exponent of the colour samples where it is not the sRGB curve, else null. */
  gamma: number | null;
  /** CMYK that the decoder hands out as 0 full ink, greatest value none. */
  reversedInk: boolean;
  /** The decoder only warns of missing or wrong pixels, so its warnings refuse the file. */
  strict: boolean;
  notes: string[];
}

/** Resolution of `perUnit` pixels with `unitsPerInch`; null for nonsense values. */
export function ppiOf(x: number, y: number, unitsPerInch: number): Ppi | null {
  const ppi = { x: x * unitsPerInch, y: y * unitsPerInch };
  const sane = (value: number) => Number.isFinite(value) && value > 0;
  return sane(ppi.x) && sane(ppi.y) ? ppi : null;
}
