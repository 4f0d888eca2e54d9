import { createRequire } from 'node:module';
import type { Plane } from '../../workers/kernels/plane.ts';

interface Mat {
  data: Uint8Array;
  convertTo(to: Mat, type: number): void;
  delete(): void;
}

interface OpenCv {
  /** Missing until the runtime has started. */
  Mat: new (
    rows?: number,
    columns?: number,
    type?: number,
  ) => Mat;
  CV_8U: number;
  CV_32S: number;
  COLOR_GRAY2BGR: number;
  THRESH_BINARY: number;
  THRESH_OTSU: number;
  DIST_L2: number;
  DIST_MASK_PRECISE: number;
  onRuntimeInitialized: () => void;
  threshold(from: Mat, to: Mat, level: number, most: number, kind: number): number;
  connectedComponents(from: Mat, labels: Mat, connectivity: number, type: number): number;
  distanceTransform(from: Mat, to: Mat, kind: number, mask: number): void;
  cvtColor(from: Mat, to: Mat, code: number): void;
  watershed(picture: Mat, markers: Mat): void;
}

/**
 * OpenCV as its npm build gives it: a general-purpose library to measure against. Wrapped, since the module itself
 * has a `then` that an `await` would follow for ever.
 */
export async function loadOpenCv(): Promise<{ cv: OpenCv }> {
  const cv = createRequire(import.meta.url)('@techstark/opencv-js') as OpenCv;
  if (cv.Mat === undefined)
    await new Promise<void>((resolve) => {
      cv.onRuntimeInitialized = resolve;
    });
  return { cv };
}

/** A plane as OpenCV holds it. */
export function matOf(cv: OpenCv, plane: Plane, inverted = false): Mat {
  const mat = new cv.Mat(plane.height, plane.width, cv.CV_8U);
  mat.data.set(inverted ? plane.data.map((value) => 255 - value) : plane.data);
  return mat;
}
