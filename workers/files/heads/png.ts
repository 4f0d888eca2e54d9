import type { Complain } from '../bad-file.ts';
import { latinText, viewOf } from '../bytes.ts';
import { crc32 } from '../crc32.ts';
import { readExif } from './ifd.ts';
import { MOST_PIXELS } from './limits.ts';
import { ppiOf, type RasterHead } from './raster.ts';

const SIGNATURE_BYTES = 8;
const METRES_PER_INCH = 0.0254;
const SRGB_GAMMA = 1 / 2.2;
/** A gamma this near to sRGB's is the usual stand-in for it (libpng draws the same line). */
const GAMMA_SLACK = 0.05;
/** Samples a pixel by the kind in the header. */
const SAMPLES: Record<number, number> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
/** Deflate makes nothing smaller than by this (zlib's technical details). */
const MOST_DEFLATED = 1032;

interface Chunk {
  type: string;
  data: Uint8Array;
}

/**
 * Header of a PNG (W3C PNG, third edition).
 * @throws BadFile for damage outside the pixels, RangeError where the file ends early
 */
export function readPngHead(bytes: Uint8Array, complain: Complain): RasterHead {
  const { chunks, pixelBytes } = readChunks(bytes, complain);
  const first = chunks[0];
  if (first?.type !== 'IHDR' || first.data.length !== 13) {
    throw complain('the PNG is damaged (it has no header); save or send it again');
  }
  const header = viewOf(first.data);
  const find = (type: string) => chunks.find((chunk) => chunk.type === type)?.data;
  const exif = readExif(find('eXIf') ?? new Uint8Array(4));
  const kind = header.getUint8(9);
  const width = header.getUint32(0);
  const height = header.getUint32(4);
  const leastBytes = (width * height * header.getUint8(8) * (SAMPLES[kind] ?? 1)) / 8 / MOST_DEFLATED;
  if (pixelBytes < leastBytes && width * height <= MOST_PIXELS) {
    throw complain('the PNG is damaged (it holds fewer pixels than it says); save or send it again');
  }
  return {
    format: 'png',
    width,
    height,
    colour: kind === 0 || kind === 4 ? 'grey' : 'rgb',
    alpha: kind >= 4 || find('tRNS') !== undefined,
    ppi: physPpi(find('pHYs')) ?? exif.ppi,
    turn: exif.turn,
    gamma: find('sRGB') || find('iCCP') || find('cICP') ? null : declaredGamma(find('gAMA')),
    reversedInk: false,
    strict: false,
    notes: find('acTL') ? ['it is animated; only its first picture is read'] : [],
  };
}

/** Every chunk up to IEND, whose sums are checked here except for the pixels' own. */
function readChunks(bytes: Uint8Array, complain: Complain): { chunks: Chunk[]; pixelBytes: number } {
  const view = viewOf(bytes);
  const chunks: Chunk[] = [];
  let pixelBytes = 0;
  for (let at = SIGNATURE_BYTES; ; ) {
    const length = view.getUint32(at);
    const end = at + 8 + length;
    const sum = view.getUint32(end);
    const type = latinText(bytes.subarray(at + 4, at + 8));
    if (type === 'IEND') return { chunks, pixelBytes };
    if (type === 'IDAT') {
      pixelBytes += length;
    } else {
      if (crc32(bytes.subarray(at + 4, end)) !== sum) {
        throw complain(`the PNG is damaged (its ${type} block fails its check); save or send it again`);
      }
      chunks.push({ type, data: bytes.subarray(at + 8, end) });
    }
    at = end + 4;
  }
}

function physPpi(data: Uint8Array | undefined) {
  if (data?.length !== 9 || data[8] !== 1) return null;
  const view = viewOf(data);
  return ppiOf(view.getUint32(0), view.getUint32(4), METRES_PER_INCH);
}

function declaredGamma(data: Uint8Array | undefined): number | null {
  if (data?.length !== 4) return null;
  const gamma = viewOf(data).getUint32(0) / 100_000;
  const nearSrgb = Math.abs(gamma / SRGB_GAMMA - 1) <= GAMMA_SLACK;
  return gamma === 0 || nearSrgb ? null : gamma;
}
