import type { Complain } from '../bad-file.ts';
import { viewOf } from '../bytes.ts';
import {
  type Directory,
  directoryOffsets,
  directoryPpi,
  directoryTurn,
  readDirectory,
  tiffStart,
} from './ifd.ts';
import type { Colour, RasterHead } from './raster.ts';

const SUBFILE_TYPE = 254;
const WIDTH = 256;
const HEIGHT = 257;
const BITS = 258;
const COMPRESSION = 259;
const MEANING = 262;
const STRIP_OFFSETS = 273;
const SAMPLES = 277;
const STRIP_BYTES = 279;
const TILE_OFFSETS = 324;
const TILE_BYTES = 325;
const INK_SET = 332;
const EXTRA_SAMPLES = 338;
const SAMPLE_FORMAT = 339;

const COLOURS: Record<number, Colour> = { 0: 'grey', 1: 'grey', 2: 'rgb', 3: 'rgb', 5: 'cmyk', 6: 'rgb' };
const COLOUR_SAMPLES = { grey: 1, rgb: 3, cmyk: 4 };
const PALETTE = 3;
const BIT_DEPTHS = [1, 2, 4, 8, 16];
/** None, CCITT RLE, G3, G4, LZW, JPEG, deflate (both numbers), PackBits. */
const COMPRESSIONS = [1, 2, 3, 4, 5, 7, 8, 32773, 32946];
/** The fax and JPEG ones, whose decoders carry on behind damage. */
const WARNING_COMPRESSIONS = [2, 3, 4, 7];

/**
 * Header of the first page of a TIFF (TIFF 6.0).
 * @throws BadFile for kinds that are not read, RangeError where the file ends early
 */
export function readTiffHead(bytes: Uint8Array, complain: Complain): RasterHead {
  const view = viewOf(bytes);
  const start = tiffStart(view);
  if (!start) throw complain('BigTIFF is not read; save it as an ordinary TIFF or as PNG');
  const pages = directoryOffsets(view, start.little, start.offset, complain).map((at) =>
    readDirectory(view, start.little, at),
  );
  const page = pages[0];
  if (!page) throw complain('the TIFF is damaged (it has no picture in it); save or send it again');
  refuseOddSamples(page, complain);
  refuseMissingPixels(page, bytes.length);
  const colour = COLOURS[page.first(MEANING, 1)];
  if (!colour || page.first(INK_SET, 1) !== 1) {
    throw complain('this kind of TIFF colour is not read; save it as grey, RGB or CMYK');
  }
  const { alpha, dropped } = extraChannels(page, colour);
  const others = pages.filter((other) => (other.first(SUBFILE_TYPE, 0) & 1) === 0).length;
  const notes = others > 1 ? [`it holds ${others} pages; only the first is read`] : [];
  if (dropped > 0) notes.push('it holds channels beside its colours; they are not read');
  return {
    format: 'tiff',
    width: page.first(WIDTH, 0),
    height: page.first(HEIGHT, 0),
    colour,
    alpha,
    ppi: directoryPpi(page),
    turn: directoryTurn(page),
    gamma: null,
    reversedInk: false,
    strict: WARNING_COMPRESSIONS.includes(page.first(COMPRESSION, 1)),
    notes,
  };
}

function refuseOddSamples(page: Directory, complain: Complain): void {
  const bits = page.values(BITS) ?? [1];
  const whole = (page.values(SAMPLE_FORMAT) ?? [1]).every((format) => format === 1);
  if (!whole || bits.some((depth) => depth !== bits[0]) || !BIT_DEPTHS.includes(bits[0]!)) {
    throw complain(
      'its samples are not 1, 2, 4, 8 or 16-bit whole numbers; save it with 8 or 16 bits a channel',
    );
  }
  if (!COMPRESSIONS.includes(page.first(COMPRESSION, 1))) {
    throw complain('its TIFF compression is not read; save it with LZW, ZIP or no compression');
  }
}

/** @throws RangeError where pixels would lie outside the file */
function refuseMissingPixels(page: Directory, fileBytes: number): void {
  const offsets = page.values(TILE_OFFSETS) ?? page.values(STRIP_OFFSETS) ?? [];
  const sizes = page.values(TILE_BYTES) ?? page.values(STRIP_BYTES) ?? [];
  if (offsets.some((offset, i) => offset + (sizes[i] ?? 0) > fileBytes))
    throw new RangeError('pixels missing');
}

/** Samples beyond the colours: the first is alpha when it says so, or when nothing says what it is. */
function extraChannels(page: Directory, colour: Colour): { alpha: boolean; dropped: number } {
  const colours = page.first(MEANING, 1) === PALETTE ? 1 : COLOUR_SAMPLES[colour];
  const extras = page.first(SAMPLES, 1) - colours;
  if (extras <= 0) return { alpha: false, dropped: 0 };
  const alpha = page.first(EXTRA_SAMPLES, 2) !== 0;
  return { alpha, dropped: alpha ? extras - 1 : extras };
}
