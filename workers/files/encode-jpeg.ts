import { MM_PER_INCH } from '../kernels/plane.ts';
import { loadVips } from './vips.ts';

const QUALITY = 92;

/**
 * A JPEG with its ppi and the sRGB profile inside.
 * @param picture.data `width * height * 3` bytes, RGB
 */
export async function encodeJpeg(picture: {
  width: number;
  height: number;
  data: Uint8Array;
  ppi: number;
}): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height, data, ppi } = picture;
  const vips = await loadVips();
  const raw = vips.Image.newFromMemory(data, width, height, 3, vips.BandFormat.uchar);
  const perMm = ppi / MM_PER_INCH;
  const tagged = raw.copy({ interpretation: 'srgb', xres: perMm, yres: perMm });
  try {
    return tagged
      .jpegsaveBuffer({ Q: QUALITY, profile: 'srgb', optimize_coding: true, subsample_mode: 'off' })
      .slice();
  } finally {
    tagged.delete();
    raw.delete();
  }
}
