import type { Complain } from '../bad-file.ts';
import { viewOf } from '../bytes.ts';
import { readExif } from './ifd.ts';
import { type Colour, type Ppi, ppiOf, type RasterHead } from './raster.ts';

/** Encoders use about ten; each costs a pass over the whole picture. */
const MOST_SCANS = 100;
const START_OF_SCAN = 0xda;
const END_OF_IMAGE = 0xd9;
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP14 = 0xee;
/** Frame markers are C0..CF but for these three: Huffman tables, an extension, arithmetic tables. */
const NOT_FRAMES = [0xc4, 0xc8, 0xcc];
const COLOURS: Record<number, Colour> = { 1: 'grey', 3: 'rgb', 4: 'cmyk' };
const CM_PER_INCH = 2.54;

/**
 * Header of a JPEG (ITU-T T.81, JFIF 1.02, EXIF 2.3). JFIF density wins over EXIF resolution. CMYK is
 * stored upside down by the programs that leave an Adobe segment; the decoder takes all CMYK so.
 * @throws BadFile for kinds that are not read, RangeError where the file ends early
 */
export function readJpegHead(bytes: Uint8Array, complain: Complain): RasterHead {
  const view = viewOf(bytes);
  let frame: Pick<RasterHead, 'width' | 'height' | 'colour'> | undefined;
  let jfif: Ppi | null = null;
  let exif = readExif(new Uint8Array(4));
  let adobe = false;
  let at = 2;
  for (;;) {
    if (view.getUint8(at) !== 0xff) throw complain('the JPEG is damaged; save or send it again');
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === START_OF_SCAN || marker === END_OF_IMAGE) break;
    const length = view.getUint16(at + 2);
    const body = bytes.subarray(at + 4, at + 2 + length);
    if (marker === APP0 && startsWith(body, 'JFIF\0')) jfif = jfifPpi(body);
    if (marker === APP1 && startsWith(body, 'Exif\0\0')) exif = readExif(body.subarray(6));
    if (marker === APP14 && startsWith(body, 'Adobe')) adobe = true;
    if (marker >= 0xc0 && marker <= 0xcf && !NOT_FRAMES.includes(marker)) frame = readFrame(body, complain);
    at += 2 + length;
  }
  if (!frame) throw complain('the JPEG is damaged (it has no picture in it); save or send it again');
  refuseOddScans(bytes, at, complain);
  return {
    format: 'jpeg',
    ...frame,
    alpha: false,
    ppi: jfif ?? exif.ppi,
    turn: exif.turn,
    gamma: null,
    reversedInk: frame.colour === 'cmyk' && !adobe,
    strict: true,
    notes: [],
  };
}

function readFrame(body: Uint8Array, complain: Complain) {
  const view = viewOf(body);
  const colour = COLOURS[view.getUint8(5)];
  if (view.getUint8(0) !== 8 || !colour) {
    throw complain('this kind of JPEG is not read; save it as an ordinary 8-bit JPEG or as PNG');
  }
  return { width: view.getUint16(3), height: view.getUint16(1), colour };
}

function jfifPpi(body: Uint8Array): Ppi | null {
  const view = viewOf(body);
  const unit = view.getUint8(7);
  if (unit !== 1 && unit !== 2) return null;
  return ppiOf(view.getUint16(8), view.getUint16(10), unit === 2 ? CM_PER_INCH : 1);
}

/**
 * Markers stand out from pixel data, so the scans can be counted, and the end found, without decoding.
 * @throws RangeError where the file has no end of image
 */
function refuseOddScans(bytes: Uint8Array, firstScan: number, complain: Complain): void {
  let scans = 0;
  for (let at = bytes.indexOf(0xff, firstScan); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const marker = bytes[at + 1];
    if (marker === END_OF_IMAGE) return;
    if (marker === START_OF_SCAN) scans++;
    if (scans > MOST_SCANS) throw complain('the JPEG is damaged (it has too many scans); save it again');
  }
  throw new RangeError('no end of image');
}

function startsWith(bytes: Uint8Array, text: string): boolean {
  return [...text].every((char, i) => bytes[i] === char.charCodeAt(0));
}
