import { joinBytes, latinText, viewOf } from '../bytes.ts';
import { encodePng } from '../encode-png.ts';

const SIGNATURE = 8;

/**
 * Bytes as a Flate stream whose rows are differences to the row above (PNG predictor, ISO 32000-1, 7.4.4.4): the
 * pixel data of a grey PNG. Since each byte differs from the one right above it, rows may hold any number of
 * components.
 *
 * @param data `rowBytes * rows` bytes
 * @returns the stream, and its dictionary entries for a picture of `components` a pixel
 */
export async function deflated(
  data: Uint8Array,
  rowBytes: number,
  components: number,
): Promise<{ bytes: Uint8Array<ArrayBuffer>; filter: string }> {
  const png = await encodePng({ width: rowBytes, height: data.length / rowBytes, bands: 1, data, ppi: 72 });
  const columns = rowBytes / components;
  const filter =
    `/Filter /FlateDecode /DecodeParms << /Predictor 15 /Colors ${components} ` +
    `/BitsPerComponent 8 /Columns ${columns} >>`;
  return { bytes: joinBytes(pixelChunks(png)), filter };
}

function pixelChunks(png: Uint8Array): Uint8Array[] {
  const view = viewOf(png);
  const chunks: Uint8Array[] = [];
  for (let at = SIGNATURE; at < png.length; ) {
    const length = view.getUint32(at);
    const type = latinText(png.subarray(at + 4, at + 8));
    if (type === 'IDAT') chunks.push(png.subarray(at + 8, at + 8 + length));
    at += length + 12;
  }
  return chunks;
}
