import { type Arrangement, arrange, arrangementOf } from './arrange.ts';
import { complainAbout } from './bad-file.ts';
import { drawSvg } from './draw-svg.ts';
import { damaged, readRasterHead } from './head.ts';
import type { RasterHead, Turn } from './heads/raster.ts';
import type { PictureHead } from './inspect.ts';
import { bandTables } from './tone.ts';
import { abandonVips, isVipsRefusal, loadVips, refusalText } from './vips.ts';
import type { VipsApi, VipsImage } from './wasm/parts.ts';

/** Decoded bytes handed over at a time. */
const BAND_BYTES = 4 * 1024 * 1024;

/** libjpeg's warnings of pixels; bytes too many between segments are common and harmless. */
const PIXEL_DAMAGE = /Corrupt JPEG data: (?!\d+ extraneous)/;

/** What makes the decoder give up. */
type FailOn = 'error' | 'warning';
type Direction = 'horizontal' | 'vertical';
type Angle = 'd90' | 'd180' | 'd270';

/** What sets a stored picture upright: a rotation, then a mirror (EXIF 2.3, tag 274). */
const UPRIGHT: Record<Turn, [Angle | null, Direction | null]> = {
  1: [null, null],
  2: [null, 'horizontal'],
  3: ['d180', null],
  4: [null, 'vertical'],
  5: ['d90', 'horizontal'],
  6: ['d90', null],
  7: ['d270', 'horizontal'],
  8: ['d270', null],
};

/**
 * Decodes a picture: 8 bits a band, interleaved, straight alpha, top row first, upright. CMYK becomes
 * RGB by (1-C)(1-K), a PNG's own gamma becomes the sRGB curve; colour profiles are not applied.
 * @param head what `inspectPicture` said of these bytes
 * @param target `width * height * bands` bytes; its content means nothing once this throws
 * @throws BadFile with one line for the user; a picture is never filled in part without it
 */
export async function decodePicture(
  bytes: Uint8Array,
  name: string,
  head: PictureHead,
  target: Uint8Array,
): Promise<void> {
  const { width, height, bands, format } = head;
  if (target.length !== width * height * bands) throw new Error('target is not width * height * bands bytes');
  const complain = complainAbout(name);
  if (format === 'svg') return drawSvg(bytes, width, height, target, complain);
  const raster = readRasterHead(bytes, format, complain);
  const vips = await loadVips();
  try {
    if (!decodeWhole(vips, bytes, raster, target)) throw complain(damaged(format));
  } catch (error) {
    if (error instanceof WebAssembly.RuntimeError) abandonVips();
    if (isVipsRefusal(error)) throw complain(damaged(format));
    throw error;
  }
}

/** Decodes once more where a JPEG's warning, which is told in full, is not of its pixels. */
function decodeWhole(vips: VipsApi, bytes: Uint8Array, head: RasterHead, target: Uint8Array): boolean {
  if (!head.strict) return decodeRaster(vips, bytes, head, target, 'error');
  try {
    return decodeRaster(vips, bytes, head, target, 'warning');
  } catch (error) {
    if (head.format !== 'jpeg' || PIXEL_DAMAGE.test(refusalText(error))) throw error;
    return decodeRaster(vips, bytes, head, target, 'error');
  }
}

/** False where the pixels are not what the header says. */
function decodeRaster(
  vips: VipsApi,
  bytes: Uint8Array,
  head: RasterHead,
  target: Uint8Array,
  failOn: FailOn,
): boolean {
  const opened: VipsImage[] = [];
  const keep = (image: VipsImage) => {
    opened.push(image);
    return image;
  };
  try {
    const stored = keep(open(vips, bytes, head.format, failOn));
    const arrangement = arrangementOf(head, stored.bands);
    if (stored.width !== head.width || stored.height !== head.height || !arrangement) return false;
    if (stored.format !== 'uchar' && stored.format !== 'ushort') return false;
    const max = stored.format === 'uchar' ? 255 : 65535;
    const tables = bandTables(head, stored.bands, arrangement.colours, max);
    const { uchar } = vips.BandFormat;
    const toned = tables
      ? keep(stored.maplut(keep(vips.Image.newFromMemory(tables, max + 1, 1, stored.bands, uchar))))
      : stored;
    copyOut(upright(keep(toned.copyMemory()), head.turn, keep), arrangement, target);
    return true;
  } finally {
    for (const image of opened) image.delete();
  }
}

function open(vips: VipsApi, bytes: Uint8Array, format: RasterHead['format'], failOn: FailOn): VipsImage {
  const options = { access: 'sequential', fail_on: failOn };
  if (format === 'png') return vips.Image.pngloadBuffer(bytes, options);
  if (format === 'jpeg') return vips.Image.jpegloadBuffer(bytes, options);
  if (format === 'webp') return vips.Image.webploadBuffer(bytes, options);
  return vips.Image.tiffloadBuffer(bytes, options);
}

function upright(image: VipsImage, turn: Turn, keep: (image: VipsImage) => VipsImage): VipsImage {
  const [angle, direction] = UPRIGHT[turn];
  let turned = image;
  if (angle) turned = keep(turned.rot(angle));
  if (direction) turned = keep(turned.flip(direction));
  return turned;
}

function copyOut(image: VipsImage, arrangement: Arrangement, target: Uint8Array): void {
  const { width, height, bands } = image;
  const rows = Math.max(1, Math.floor(BAND_BYTES / (width * bands)));
  for (let y = 0; y < height; y += rows) {
    const band = image.crop(0, y, width, Math.min(rows, height - y));
    try {
      arrange(band.writeToMemory() as Uint8Array, arrangement, target, y * width * arrangement.to);
    } finally {
      band.delete();
    }
  }
}
