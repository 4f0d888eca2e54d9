import { BadFile, type Complain } from './bad-file.ts';
import { readJpegHead } from './heads/jpeg.ts';
import { readPngHead } from './heads/png.ts';
import type { RasterHead } from './heads/raster.ts';
import { readTiffHead } from './heads/tiff.ts';
import { readWebpHead } from './heads/webp.ts';
import type { PictureFormat } from './sniff.ts';

/** Most pixels of a picture: A2 at 600 ppi is 139 Mpx, A3 70 Mpx. */
export const MOST_PIXELS = 120_000_000;

type RasterFormat = Exclude<PictureFormat, 'svg'>;

const READERS: Record<RasterFormat, (bytes: Uint8Array, complain: Complain) => RasterHead> = {
  png: readPngHead,
  jpeg: readJpegHead,
  webp: readWebpHead,
  tiff: readTiffHead,
};

const NAMES: Record<RasterFormat, string> = { png: 'PNG', jpeg: 'JPEG', webp: 'WebP', tiff: 'TIFF' };

/** Header of a raster file, within the limits. @throws BadFile */
export function readRasterHead(bytes: Uint8Array, format: RasterFormat, complain: Complain): RasterHead {
  const head = readWhole(bytes, format, complain);
  if (head.width === 0 || head.height === 0) {
    throw complain(`the picture is ${head.width} x ${head.height} px: there is nothing in it; save it again`);
  }
  if (head.width * head.height > MOST_PIXELS) {
    const size = `${head.width} x ${head.height} px (${Math.round((head.width * head.height) / 1e6)} megapixels)`;
    throw complain(
      `the picture is ${size}; at most ${MOST_PIXELS / 1e6} megapixels are read: save it at a lower ppi`,
    );
  }
  return head;
}

function readWhole(bytes: Uint8Array, format: RasterFormat, complain: Complain): RasterHead {
  try {
    return READERS[format](bytes, complain);
  } catch (error) {
    if (error instanceof BadFile || !(error instanceof RangeError)) throw error;
    throw complain(`the file ends early (truncated ${NAMES[format]}); save or send it again`);
  }
}

/** The line for pixels that do not decode. */
export function damaged(format: RasterFormat): string {
  return `the ${NAMES[format]} is damaged and cannot be read whole; save or send it again`;
}
