import type { Plane } from '../../../workers/kernels/plane.ts';
import { cv } from '../kernels/opencv.ts';

/**
 * Power of a plane by OpenCV's Fourier transform, its mean taken away: frequency 0 first, row by row.
 *
 * @param windowed under a Hann window, so that single peaks stay narrow
 */
export function powerOf({ width, height, data }: Plane, windowed: boolean): Float64Array {
  const mean = data.reduce((sum, value) => sum + value, 0) / data.length;
  const hann = (at: number, size: number) => (windowed ? 0.5 - 0.5 * Math.cos((2 * Math.PI * at) / size) : 1);
  const values = Float32Array.from(
    data,
    (value, i) => ((value - mean) / 255) * hann(i % width, width) * hann(Math.floor(i / width), height),
  );
  const real = new cv.Mat(height, width, cv.CV_32FC1);
  real.data32F.set(values);
  const complex = new cv.Mat();
  cv.dft(real, complex, cv.DFT_COMPLEX_OUTPUT, 0);
  const found: Float32Array = complex.data32F;
  const power = Float64Array.from(
    { length: data.length },
    (_, i) => found[2 * i]! ** 2 + found[2 * i + 1]! ** 2,
  );
  real.delete();
  complex.delete();
  return power;
}

/** Cycles over the picture of the highest peak, right and down, to a part of a step; of two opposite ones the right. */
export function peakOf(power: Float64Array, width: number, height: number): [number, number] {
  const at = (x: number, y: number) => power[((y + height) % height) * width + ((x + width) % width)]!;
  let best = [0, 0, 0] as [number, number, number];
  for (let y = -height / 2; y < height / 2; y++)
    for (let x = 0; x < width / 2; x++) {
      const away = x * x + y * y;
      if (away > 9 && at(x, y) > best[2]) best = [x, y, at(x, y)];
    }
  const [x, y] = best;
  /** The top of a parabola through three logarithms. */
  const top = (before: number, here: number, after: number) => {
    const [a, b, c] = [Math.log(before), Math.log(here), Math.log(after)];
    return (a - c) / (2 * (a - 2 * b + c));
  };
  return [x + top(at(x - 1, y), at(x, y), at(x + 1, y)), y + top(at(x, y - 1), at(x, y), at(x, y + 1))];
}
