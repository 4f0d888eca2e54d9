import { PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { joinBytes, latinText, viewOf } from './bytes.ts';

const POINTS_PER_MM = 72 / 25.4;
const AFTER_SIGNATURE = 8;

/** A page that is one picture. */
export interface PicturePage {
  /** An 8-bit RGB PNG without interlace; it goes in as it is compressed. */
  png: Uint8Array;
  /** Width and height of the page, which the picture fills, mm. */
  mm: readonly [number, number];
}

/**
 * A PDF of pictures, one to a page at its true size. The pages' pixels are exactly those of the PNGs; the same pages
 * always give the same bytes.
 */
export async function picturePdf({
  pages,
  title,
}: {
  pages: readonly PicturePage[];
  title: string;
}): Promise<Uint8Array<ArrayBuffer>> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  pdf.setTitle(title);
  for (const { png, mm } of pages) {
    const [width, height] = mm.map((length) => Number((length * POINTS_PER_MM).toFixed(3))) as [
      number,
      number,
    ];
    const page = pdf.addPage([width, height]);
    const image = pdf.context.register(imageOf(pdf, png));
    page.node.setXObject(PDFName.of('Sheet'), image);
    const content = pdf.context.stream(`q ${width} 0 0 ${height} 0 0 cm /Sheet Do Q`);
    page.node.set(PDFName.of('Contents'), pdf.context.register(content));
  }
  return new Uint8Array(await pdf.save({ useObjectStreams: false }));
}

/** What PNG and PDF call the same: deflated rows, each with the filter it was given. */
function imageOf(pdf: PDFDocument, png: Uint8Array): PDFRawStream {
  const chunks = chunksOf(png);
  const header = viewOf(chunks.find(({ type }) => type === 'IHDR')!.data);
  const [width, height] = [header.getUint32(0), header.getUint32(4)];
  const data = joinBytes(chunks.filter(({ type }) => type === 'IDAT').map((chunk) => chunk.data));
  const dict = pdf.context.obj({
    Type: 'XObject',
    Subtype: 'Image',
    Width: width,
    Height: height,
    ColorSpace: 'DeviceRGB',
    BitsPerComponent: 8,
    Filter: 'FlateDecode',
    DecodeParms: { Predictor: 15, Colors: 3, BitsPerComponent: 8, Columns: width },
    Length: data.length,
  });
  return PDFRawStream.of(dict, data);
}

function chunksOf(png: Uint8Array): { type: string; data: Uint8Array }[] {
  const view = viewOf(png);
  const chunks: { type: string; data: Uint8Array }[] = [];
  for (let at = AFTER_SIGNATURE; at + 8 <= png.length; ) {
    const length = view.getUint32(at);
    const type = latinText(png.subarray(at + 4, at + 8));
    chunks.push({ type, data: png.subarray(at + 8, at + 8 + length) });
    at += length + 12;
  }
  return chunks;
}
