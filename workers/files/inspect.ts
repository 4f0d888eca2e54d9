import { complainAbout } from './bad-file.ts';
import { readRasterHead } from './head.ts';
import type { Ppi, RasterHead } from './heads/raster.ts';
import { measureSvg } from './heads/svg.ts';
import { type PictureFormat, sniff } from './sniff.ts';

const MOST_BYTES = 512 * 1024 * 1024;

/** What a picture file says of itself; sizes are of the upright picture. */
export interface PictureHead {
  format: PictureFormat;
  /** Pixels. */
  width: number;
  /** Pixels. */
  height: number;
  /** Bands after decoding: grey, grey + alpha, RGB, RGB + alpha. */
  bands: 1 | 2 | 3 | 4;
  /** As the file declares it, believable or not; null where it declares none, and for SVG. */
  ppi: Ppi | null;
  /** Width and height of an SVG whose units are physical, else null. */
  sizeMm: [number, number] | null;
  /** Lines for the user about what is not taken from the file. */
  notes: string[];
}

/**
 * Reads the header of a picture and refuses what cannot be decoded.
 * @param name the file's name, for messages
 * @param options.vectorPpi pixels per inch at which an SVG is to be drawn
 * @param options.widthMm width at which an SVG is to be drawn, instead of its own
 * @throws BadFile with one line for the user
 */
export async function inspectPicture(
  bytes: Uint8Array,
  name: string,
  options: { vectorPpi: number; widthMm?: number },
): Promise<PictureHead> {
  const complain = complainAbout(name);
  if (bytes.length > MOST_BYTES) {
    throw complain('the file is over 512 MB; save it at a lower ppi or with compression');
  }
  const format = sniff(bytes, complain);
  if (format === 'svg') {
    const { width, height, sizeMm, notes } = measureSvg(bytes, options, complain);
    return { format, width, height, bands: 4, ppi: null, sizeMm, notes };
  }
  return uprightHead(readRasterHead(bytes, format, complain));
}

/** The header of the picture once it stands upright. */
export function uprightHead(head: RasterHead): PictureHead {
  const { format, width, height, ppi, notes } = head;
  const onItsSide = head.turn >= 5;
  const colours = head.colour === 'grey' ? 1 : 3;
  const bands = (head.alpha ? colours + 1 : colours) as PictureHead['bands'];
  return {
    format,
    width: onItsSide ? height : width,
    height: onItsSide ? width : height,
    bands,
    ppi: ppi && onItsSide ? { x: ppi.y, y: ppi.x } : ppi,
    sizeMm: null,
    notes,
  };
}
