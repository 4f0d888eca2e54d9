import { BadFile, type Complain } from './bad-file.ts';
import { readJpegHead } from './heads/jpeg.ts';
import { refuseSize } from './heads/limits.ts';
import { readPngHead } from './heads/png.ts';
import type { RasterHead } from './heads/raster.ts';
import { readTiffHead } from './heads/tiff.ts';
import { readWebpHead } from './heads/webp.ts';
import type { PictureFormat } from './sniff.ts';

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
  refuseSize(head.width, head.height, complain);
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
