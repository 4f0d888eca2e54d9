import { printModel } from '../../../src/ink/model.ts';
import type { PrintInput } from '../../../src/ink/model-input.ts';
import type { Mark } from '../../../src/press/marks.ts';
import { latinBytes } from '../bytes.ts';
import type { FaxPicture } from '../encode-tiff.ts';
import { PdfBuilder, type Ref } from './builder.ts';
import { markContent } from './mark-content.ts';
import { number } from './objects.ts';
import { type PixelPage, pageBoxes, points } from './page.ts';
import { allPlatesSpace, deviceNSpace, type LabOf, separationSpace } from './separation.ts';
import { standardParts } from './standard-parts.ts';

/** A Flate stream of pixels with the dictionary entries it needs. */
export interface DeflatedPicture {
  bytes: Uint8Array;
  filter: string;
}

/** The plates as pixels: woven into one picture, one picture a plate, or one bit a pixel on whole sheets. */
export type PressPixels =
  | { kind: 'one-image'; picture: DeflatedPicture }
  | { kind: 'by-plate'; pictures: readonly DeflatedPicture[] }
  | { kind: 'film'; pictures: readonly FaxPicture[] };

export interface PressPdf {
  title: string;
  /** Moment of making, ISO 8601 in UTC. */
  madeAt: string;
  page: PixelPage;
  /** One name for each plate, in print order. */
  names: readonly string[];
  /** How they print, for the look of the file on a screen. */
  print: PrintInput;
  pixels: PressPixels;
  marks: readonly Mark[];
  /** Whether fills were spread under one another. */
  trapped: boolean;
}

/**
 * One page with every plate on it under its own name, built to the rules of PDF/X-4 (ISO 15930-7). `one-image` is a
 * DeviceN picture, `by-plate` and `film` Separation pictures that overprint.
 */
export function pressPdf(input: PressPdf): Uint8Array<ArrayBuffer> {
  const { page, names, pixels, marks } = input;
  const model = printModel(input.print);
  const labOf: LabOf = (tints) => model.labOf(tints);
  const pdf = new PdfBuilder();
  const single = names.map((_, at) => separationSpace(pdf, names, at, labOf));
  const drawn = pictures(pdf, input, single, labOf);
  const overprint = pdf.add('<< /Type /ExtGState /OP true /op true /OPM 1 >>');
  const all = allPlatesSpace(pdf);
  const spaces = [`/All ${all}`, ...single.map((space, i) => `/Ink${i} ${space}`)];
  const placed = drawn.map(({ at, size }, i) => {
    const [x, y, w, h] = [at[0], page.height - at[1] - size[1], size[0], size[1]].map((px) =>
      number(points(px, page.ppi)),
    );
    return `q ${w} 0 0 ${h} ${x} ${y} cm /Plate${i} Do Q`;
  });
  const state = pixels.kind === 'one-image' ? '' : '/Over gs\n';
  const content = `${state}${placed.join('\n')}\n${markContent(marks, points(page.height, page.ppi))}`;
  const stream = pdf.stream('', latinBytes(content));
  const { catalogue, trailer } = standardParts(pdf, input);
  const pages = pdf.next(1);
  const leaf = pdf.add(
    `<< /Type /Page /Parent ${pages} ${pageBoxes(page)} /Contents ${stream} /Resources << ` +
      `/ExtGState << /Over ${overprint} >> /ColorSpace << ${spaces.join(' ')} >> ` +
      `/XObject << ${drawn.map(({ image }, i) => `/Plate${i} ${image}`).join(' ')} >> >> >>`,
  );
  pdf.add(`<< /Type /Pages /Kids [${leaf}] /Count 1 >>`);
  const root = pdf.add(`<< /Type /Catalog /Pages ${pages} ${catalogue} >>`);
  return pdf.finish('1.6', `/Root ${root} ${trailer}`);
}

interface Drawn {
  image: Ref;
  /** Upper left corner and size on the page, pixels. */
  at: readonly [number, number];
  size: readonly [number, number];
}

function pictures(pdf: PdfBuilder, input: PressPdf, single: readonly Ref[], labOf: LabOf): Drawn[] {
  const { page, names, pixels } = input;
  const [left, top, right, bottom] = page.bleed;
  const at = [left, top] as const;
  const size = [right - left, bottom - top] as const;
  const flate = ({ bytes, filter }: DeflatedPicture, space: string): Drawn => ({
    image: pdf.stream(`${imageHead(size)} /BitsPerComponent 8 /ColorSpace ${space} ${filter}`, bytes),
    at,
    size,
  });
  switch (pixels.kind) {
    case 'one-image':
      return [flate(pixels.picture, deviceNSpace(pdf, names, labOf))];
    case 'by-plate':
      return pixels.pictures.map((picture, i) => flate(picture, single[i]!));
    case 'film':
      return pixels.pictures.map(({ columns, rows, bytes }, i) => {
        const parms = `<< /K -1 /Columns ${columns} /Rows ${rows} /BlackIs1 true >>`;
        const entries = `${imageHead([columns, rows])} /BitsPerComponent 1 /ColorSpace ${single[i]!}`;
        const image = pdf.stream(`${entries} /Filter /CCITTFaxDecode /DecodeParms ${parms}`, bytes);
        return { image, at: [0, 0], size: [columns, rows] };
      });
  }
}

function imageHead([width, height]: readonly [number, number]): string {
  return `/Type /XObject /Subtype /Image /Width ${width} /Height ${height}`;
}
