import type { JobSheet } from '../../src/press/job-sheet.ts';
import { decodePicture } from './decode.ts';
import { encodeJpeg } from './encode-jpeg.ts';
import { encodeLabelsPng, encodePng } from './encode-png.ts';
import { encodeFax, encodeTiff, type GreyPicture, type TiffDepth } from './encode-tiff.ts';
import { inspectPicture, type PictureHead } from './inspect.ts';
import { deflated } from './pdf/deflated.ts';
import { greyPdf } from './pdf/grey-pdf.ts';
import { picturesPdf } from './pdf/pictures-pdf.ts';
import type { PressPdf } from './pdf/press-pdf.ts';
import { proofPdf } from './pdf/proof-pdf.ts';

interface OpenArgs {
  bytes: Uint8Array;
  name: string;
  options: { vectorPpi: number; widthMm?: number };
}

/** A picture with its pixels on shared memory. */
export interface OpenedPicture {
  head: PictureHead;
  /** `width * height * bands` bytes; see `decodePicture`. */
  pixels: Uint8Array<SharedArrayBuffer>;
}

async function openPicture({ bytes, name, options }: OpenArgs): Promise<OpenedPicture> {
  const head = await inspectPicture(bytes, name, options);
  const pixels = new Uint8Array(new SharedArrayBuffer(head.width * head.height * head.bands));
  await decodePicture(bytes, name, head, pixels);
  return { head, pixels };
}

interface LabelsArgs {
  labels: Uint32Array;
  width: number;
  height: number;
  ppi: number;
  count: number;
}

/** Making files, as jobs for a worker: one argument object each. */
export const fileJobs = {
  encodePng,
  encodeLabelsPng: (args: LabelsArgs) =>
    encodeLabelsPng(args.labels, args.width, args.height, args.ppi, args.count),
  encodeJpeg,
  encodeTiff: ({ picture, depth }: { picture: GreyPicture; depth: TiffDepth }) => encodeTiff(picture, depth),
  encodeFax,
  deflated: (args: { data: Uint8Array; rowBytes: number; components: number }) =>
    deflated(args.data, args.rowBytes, args.components),
  greyPdf,
  jobSheetPdf: async (sheet: JobSheet) => (await import('./pdf/job-sheet-pdf.ts')).jobSheetPdf(sheet),
  proofPdf,
  pressPdf: async (args: PressPdf) => (await import('./pdf/press-pdf.ts')).pressPdf(args),
  picturesPdf,
};

/** Jobs that get a worker of their own. */
export const aloneJobs = { openPicture };
