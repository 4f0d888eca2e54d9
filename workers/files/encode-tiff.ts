import { MM_PER_INCH } from '../kernels/plane.ts';
import { joinBytes, viewOf } from './bytes.ts';
import { loadVips } from './vips.ts';

/** A picture of one grey byte a pixel, as TIFF takes it. */
export interface GreyPicture {
  width: number;
  height: number;
  /** `width * height` bytes a page, 0 black .. 255 white, page after page. */
  data: Uint8Array;
  ppi: number;
}

/** Two values by Group 4, or all 256 by LZW. */
export type TiffDepth = 'one-bit' | 'grey';

/**
 * A TIFF of one or more pages of the same size, black as 0 (min-is-black): 8-bit with LZW, or one bit a pixel in
 * CCITT Group 4 (ITU-T T.6), where what lies below the middle is black.
 */
export async function encodeTiff(picture: GreyPicture, depth: TiffDepth): Promise<Uint8Array<ArrayBuffer>> {
  const options =
    depth === 'one-bit'
      ? { compression: 'ccittfax4', bitdepth: 1 }
      : { compression: 'lzw', predictor: 'horizontal' };
  return save(picture, options);
}

/** One bit a pixel in Group 4 without a file around it, 1 for black, its sides padded with white to whole 16. */
export interface FaxPicture {
  columns: number;
  rows: number;
  bytes: Uint8Array;
}

const TILE = 16;

/** The Group 4 data of one picture in one piece: a TIFF of a single tile, taken out of its file. */
export async function encodeFax(picture: GreyPicture): Promise<FaxPicture> {
  const columns = Math.ceil(picture.width / TILE) * TILE;
  const rows = Math.ceil(picture.height / TILE) * TILE;
  const tiff = await save(
    { ...picture, data: padded(picture, columns, rows), width: columns, height: rows },
    {
      compression: 'ccittfax4',
      bitdepth: 1,
      miniswhite: true,
      tile: true,
      tile_width: columns,
      tile_height: rows,
    },
  );
  return { columns, rows, bytes: onlyTile(tiff) };
}

function padded({ width, height, data }: GreyPicture, columns: number, rows: number): Uint8Array {
  const wide = new Uint8Array(columns * rows).fill(255);
  for (let y = 0; y < height; y++) wide.set(data.subarray(y * width, (y + 1) * width), y * columns);
  return wide;
}

const TILE_OFFSETS = 324;
const TILE_BYTE_COUNTS = 325;

/** The bytes of the one tile of a little-endian TIFF. */
function onlyTile(tiff: Uint8Array): Uint8Array {
  const view = viewOf(tiff);
  const directory = view.getUint32(4, true);
  const entries = Array.from({ length: view.getUint16(directory, true) }, (_, i) => directory + 2 + i * 12);
  const value = (tag: number) => {
    const entry = entries.find((at) => view.getUint16(at, true) === tag)!;
    return view.getUint32(entry + 8, true);
  };
  const offset = value(TILE_OFFSETS);
  return joinBytes([tiff.subarray(offset, offset + value(TILE_BYTE_COUNTS))]);
}

async function save(
  picture: GreyPicture,
  options: Record<string, unknown>,
): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height, data, ppi } = picture;
  const pages = data.length / (width * height);
  if (!Number.isInteger(pages) || pages < 1)
    throw new Error('data is not whole pages of width * height bytes');
  const vips = await loadVips();
  const raw = vips.Image.newFromMemory(data, width, height * pages, 1, vips.BandFormat.uchar);
  const perMm = ppi / MM_PER_INCH;
  const tagged = raw.copy({ interpretation: 'b-w', xres: perMm, yres: perMm });
  if (pages > 1) tagged.setInt('page-height', height);
  try {
    return tagged.tiffsaveBuffer({ keep: 'none', resunit: 'inch', ...options }).slice();
  } finally {
    tagged.delete();
    raw.delete();
  }
}
