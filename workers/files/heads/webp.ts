import type { Complain } from '../bad-file.ts';
import { latinText, viewOf } from '../bytes.ts';
import { readExif } from './ifd.ts';
import type { RasterHead } from './raster.ts';

const ANIMATED = 0x02;
const ALPHA = 0x10;

/**
 * Header of a WebP (RFC 9649).
 * @throws BadFile for a file without picture, RangeError where the file ends early
 */
export function readWebpHead(bytes: Uint8Array, complain: Complain): RasterHead {
  const chunks = readChunks(bytes);
  const canvas = chunks.get('VP8X');
  const lossless = chunks.get('VP8L');
  const lossy = chunks.get('VP8 ');
  const size = canvas ? canvasSize(canvas) : lossless ? losslessSize(lossless) : lossy && lossySize(lossy);
  if (!size) throw complain('the WebP is damaged (it has no picture in it); save or send it again');
  const flags = canvas?.[0] ?? 0;
  const animated = (flags & ANIMATED) !== 0;
  const alpha =
    animated ||
    (flags & ALPHA) !== 0 ||
    chunks.has('ALPH') ||
    (lossless !== undefined && losslessAlpha(lossless));
  const exif = readExif(chunks.get('EXIF') ?? new Uint8Array(4));
  return {
    format: 'webp',
    ...size,
    colour: 'rgb',
    alpha,
    ppi: exif.ppi,
    turn: exif.turn,
    gamma: null,
    reversedInk: false,
    strict: false,
    notes: animated ? ['it is animated; only its first picture is read'] : [],
  };
}

/** The first chunk of each kind. */
function readChunks(bytes: Uint8Array): Map<string, Uint8Array> {
  const view = viewOf(bytes);
  const end = 8 + view.getUint32(4, true);
  if (end > bytes.length) throw new RangeError('shorter than it says');
  const chunks = new Map<string, Uint8Array>();
  for (let at = 12; at + 8 <= end; ) {
    const type = latinText(bytes.subarray(at, at + 4));
    const length = view.getUint32(at + 4, true);
    if (at + 8 + length > end) throw new RangeError('a chunk is longer than the file');
    if (!chunks.has(type)) chunks.set(type, bytes.subarray(at + 8, at + 8 + length));
    at += 8 + length + (length & 1);
  }
  return chunks;
}

function canvasSize(data: Uint8Array) {
  const view = viewOf(data);
  const less = (at: number) => view.getUint16(at, true) | (view.getUint8(at + 2) << 16);
  return { width: less(4) + 1, height: less(7) + 1 };
}

function lossySize(data: Uint8Array) {
  const view = viewOf(data);
  return { width: view.getUint16(6, true) & 0x3fff, height: view.getUint16(8, true) & 0x3fff };
}

function losslessSize(data: Uint8Array) {
  const bits = viewOf(data).getUint32(1, true);
  return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
}

function losslessAlpha(data: Uint8Array): boolean {
  return (viewOf(data).getUint32(1, true) & 0x10000000) !== 0;
}
