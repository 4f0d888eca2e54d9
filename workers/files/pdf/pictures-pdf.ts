import { latinBytes } from '../bytes.ts';
import { PdfBuilder } from './builder.ts';
import { number, numbers, textString } from './objects.ts';

const POINTS_PER_MM = 72 / 25.4;

/** A page that is one picture. */
export interface PicturePage {
  width: number;
  height: number;
  /** RGB, sRGB, as `deflated` gives it. */
  pixels: { bytes: Uint8Array; filter: string };
  /** Width and height of the page, which the picture fills, mm. */
  mm: readonly [number, number];
}

/**
 * A flat PDF 1.4 of pictures for looking at, one to a page at its true size, in DeviceRGB, which viewers take for
 * sRGB. The same pages always give the same bytes.
 */
export function picturesPdf({
  pages,
  title,
}: {
  pages: readonly PicturePage[];
  title: string;
}): Uint8Array<ArrayBuffer> {
  const pdf = new PdfBuilder();
  const drawn = pages.map(({ width, height, pixels, mm }) => {
    const [across, down] = mm.map((length) => number(length * POINTS_PER_MM));
    const image = pdf.stream(
      `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} /ColorSpace /DeviceRGB ` +
        `/BitsPerComponent 8 ${pixels.filter}`,
      pixels.bytes,
    );
    const content = pdf.stream('', latinBytes(`q ${across} 0 0 ${down} 0 0 cm /Sheet Do Q`));
    const box = numbers([0, 0, Number(across), Number(down)]);
    return `/MediaBox [${box}] /Resources << /XObject << /Sheet ${image} >> >> /Contents ${content}`;
  });
  const tree = pdf.next(drawn.length);
  const kids = drawn.map((entries) => pdf.add(`<< /Type /Page /Parent ${tree} ${entries} >>`));
  pdf.add(`<< /Type /Pages /Kids [${kids.join(' ')}] /Count ${kids.length} >>`);
  const root = pdf.add(`<< /Type /Catalog /Pages ${tree} >>`);
  const info = pdf.add(`<< /Title ${textString(title)} >>`);
  return pdf.finish('1.4', `/Root ${root} /Info ${info}`);
}
