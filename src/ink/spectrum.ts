import { BANDS, WEIGHTS } from './weights.ts';

/** Reflectance per band, 380 to 730 nm by 10; 0..1, 1 = perfect diffuser. */
export type Spectrum = Float64Array;

/** CIE XYZ, D50, 2 degree, absolute, Y = 1 for the perfect diffuser. */
export type Xyz = [number, number, number];

/** The XYZ of a reflectance under D50. */
export function xyzOfSpectrum(spectrum: Spectrum): Xyz {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let band = 0; band < BANDS; band++) {
    const reflectance = spectrum[band]!;
    const weight = WEIGHTS[band]!;
    x += weight[0] * reflectance;
    y += weight[1] * reflectance;
    z += weight[2] * reflectance;
  }
  return [x, y, z];
}
