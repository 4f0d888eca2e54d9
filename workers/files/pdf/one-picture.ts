import type { PixelBox } from '../../../src/press/sheet-pixels.ts';
import { latinBytes } from '../bytes.ts';
import { PdfBuilder } from './builder.ts';
import { deflated } from './deflated.ts';
import { number, textString } from './objects.ts';
import { pageBoxes, points } from './page.ts';

/** A page that is one picture. */
export interface OnePicture {
  width: number;
  height: number;
  /** `width * height * components` bytes. */
  data: Uint8Array;
  components: 1 | 3;
  /** As PDF writes it. */
  colourSpace: string;
  ppi: number;
  title: string;
  /** In pixels; the whole page where it is left out. */
  trim?: PixelBox;
}

/**
 * A flat PDF 1.4 of one page of exactly its physical size, holding one 8-bit picture at 100 %. The same picture always
 * gives the same bytes.
 */
export async function onePicturePdf(picture: OnePicture): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height, data, components, colourSpace, ppi, title } = picture;
  const trim = picture.trim ?? [0, 0, width, height];
  if (data.length !== width * height * components)
    throw new Error(`data is not width * height${components > 1 ? ` * ${components}` : ''} bytes`);
  const { bytes, filter } = await deflated(data, width * components, components);
  const pdf = new PdfBuilder();
  const image = pdf.stream(
    `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} /ColorSpace ${colourSpace} ` +
      `/BitsPerComponent 8 ${filter}`,
    bytes,
  );
  const placed = `q ${number(points(width, ppi))} 0 0 ${number(points(height, ppi))} 0 0 cm /Picture Do Q`;
  const content = pdf.stream('', latinBytes(placed));
  const pages = pdf.next(1);
  const page = pdf.add(
    `<< /Type /Page /Parent ${pages} ${pageBoxes({ width, height, ppi, trim, bleed: trim })} ` +
      `/Resources << /XObject << /Picture ${image} >> >> /Contents ${content} >>`,
  );
  pdf.add(`<< /Type /Pages /Kids [${page}] /Count 1 >>`);
  const root = pdf.add(`<< /Type /Catalog /Pages ${pages} >>`);
  const info = pdf.add(`<< /Title ${textString(title)} >>`);
  return pdf.finish('1.4', `/Root ${root} /Info ${info}`);
}
