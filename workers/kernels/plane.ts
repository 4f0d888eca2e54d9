/** Bytes on memory that workers share; every pixel buffer of the house is one of these views. */
export type SharedBytes = Uint8Array<SharedArrayBuffer>;

/** One coverage raster, row by row: 0 none (paper) .. 255 solid. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  /** `width * height` bytes. */
  readonly data: SharedBytes;
}

/** One label a pixel: 0 none, else 1..n. */
export interface LabelPlane {
  readonly width: number;
  readonly height: number;
  /** `width * height` labels. */
  readonly data: Uint32Array<SharedArrayBuffer>;
}

/** Millimetres in an inch, the bridge between ppi and mm. */
export const MM_PER_INCH = 25.4;

/** Pixels in `mm` millimetres at `ppi` pixels per inch (not rounded). */
export function mmToPx(mm: number, ppi: number): number {
  return (mm * ppi) / MM_PER_INCH;
}

/** Millimetres across `px` pixels at `ppi` pixels per inch. */
export function pxToMm(px: number, ppi: number): number {
  return (px * MM_PER_INCH) / ppi;
}
