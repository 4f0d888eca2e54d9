import type { SharedBytes } from '../kernels/plane.ts';
import { decodePicture } from './decode.ts';
import { encodeLabelsPng, encodePng } from './encode-png.ts';
import { greyPdf } from './grey-pdf.ts';
import { inspectPicture, type PictureHead } from './inspect.ts';

interface InspectArgs {
  bytes: Uint8Array;
  name: string;
  options: { vectorPpi: number; widthMm?: number };
}

interface DecodeArgs {
  bytes: Uint8Array;
  name: string;
  head: PictureHead;
  target: SharedBytes;
}

interface LabelsArgs {
  labels: Uint32Array;
  width: number;
  height: number;
  ppi: number;
  count: number;
}

/** File work as jobs for a worker: one argument object each. */
export const fileJobs = {
  inspectPicture: (args: InspectArgs) => inspectPicture(args.bytes, args.name, args.options),
  decodePicture: (args: DecodeArgs) => decodePicture(args.bytes, args.name, args.head, args.target),
  encodePng: (args: Parameters<typeof encodePng>[0]) => encodePng(args),
  encodeLabelsPng: (args: LabelsArgs) =>
    encodeLabelsPng(args.labels, args.width, args.height, args.ppi, args.count),
  greyPdf: (args: Parameters<typeof greyPdf>[0]) => greyPdf(args),
};
