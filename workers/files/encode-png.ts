import { MM_PER_INCH } from '../kernels/plane.ts';
import { withChunk } from './png-chunks.ts';
import { loadVips } from './vips.ts';

const MOST_16_BIT_LABELS = 65_536;
/** With differences to the row above, as small as the highest level and three times as fast. */
const COMPRESSION = 2;
const PERCEPTUAL = Uint8Array.of(0);

interface Samples {
  width: number;
  height: number;
  bands: number;
  data: Uint8Array | Uint16Array;
  ppi: number;
}

/**
 * An 8-bit PNG with its ppi in pHYs (which holds whole pixels per metre).
 * @param picture.bands 1 grey, 3 RGB, 4 RGB + straight alpha
 * @param picture.data `width * height * bands` bytes
 * @param picture.srgb marks the colours as sRGB
 */
export async function encodePng(picture: {
  width: number;
  height: number;
  bands: 1 | 3 | 4;
  data: Uint8Array;
  ppi: number;
  srgb?: boolean;
}): Promise<Uint8Array<ArrayBuffer>> {
  const png = await save(picture, picture.bands === 1 ? 'b-w' : 'srgb');
  return picture.srgb ? withChunk(png, 'sRGB', PERCEPTUAL) : png;
}

/**
 * A PNG of a label map: 16-bit grey where there are fewer than 65,536 labels, else RGB with the label
 * little-endian (red lowest).
 * @param labels `width * height` labels, 0 none
 * @param count the number of labels, which is also the greatest
 */
export async function encodeLabelsPng(
  labels: Uint32Array,
  width: number,
  height: number,
  ppi: number,
  count: number,
): Promise<Uint8Array<ArrayBuffer>> {
  if (count < MOST_16_BIT_LABELS) {
    return save({ width, height, bands: 1, data: new Uint16Array(labels), ppi }, 'grey16');
  }
  const data = new Uint8Array(labels.length * 3);
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i]!;
    data[i * 3] = label;
    data[i * 3 + 1] = label >>> 8;
    data[i * 3 + 2] = label >>> 16;
  }
  return save({ width, height, bands: 3, data, ppi }, 'srgb');
}

async function save(
  picture: Samples,
  interpretation: 'b-w' | 'srgb' | 'grey16',
): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height, bands, data, ppi } = picture;
  if (data.length !== width * height * bands) throw new Error('data is not width * height * bands samples');
  const vips = await loadVips();
  const { uchar, ushort } = vips.BandFormat;
  const sampleFormat = data instanceof Uint16Array ? ushort : uchar;
  const raw = vips.Image.newFromMemory(data, width, height, bands, sampleFormat);
  const perMm = ppi / MM_PER_INCH;
  const tagged = raw.copy({ interpretation, xres: perMm, yres: perMm });
  try {
    return tagged
      .pngsaveBuffer({ keep: 'none', compression: COMPRESSION, filter: vips.ForeignPngFilter.up })
      .slice();
  } finally {
    tagged.delete();
    raw.delete();
  }
}
