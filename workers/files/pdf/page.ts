import type { PixelBox } from '../../../src/press/sheet-pixels.ts';
import { numbers } from './objects.ts';

const POINTS_PER_INCH = 72;

/** A page in pixels. */
export interface PixelPage {
  width: number;
  height: number;
  ppi: number;
  trim: PixelBox;
  bleed: PixelBox;
}

/** Pixels as PDF points. */
export function points(pixels: number, ppi: number): number {
  return (pixels * POINTS_PER_INCH) / ppi;
}

/** MediaBox, BleedBox and TrimBox of a page; PDF counts upwards. */
export function pageBoxes({ width, height, ppi, trim, bleed }: PixelPage): string {
  const box = ([left, top, right, bottom]: PixelBox) =>
    numbers([left, height - bottom, right, height - top].map((pixels) => points(pixels, ppi)));
  return `/MediaBox [${box([0, 0, width, height])}] /BleedBox [${box(bleed)}] /TrimBox [${box(trim)}]`;
}
