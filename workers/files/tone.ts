import type { RasterHead } from './heads/raster.ts';

/**
 * The 8-bit value of every sample value, one table a band, interleaved: 16 bits rounded to 8, a gamma
 * turned into the sRGB curve, reversed ink turned round. Null where 8-bit samples stand as they are.
 * @param max the greatest sample value
 * @param colours bands of colour; bands behind them are only brought to 8 bits
 */
export function bandTables(
  head: RasterHead,
  bands: number,
  colours: number,
  max: 255 | 65535,
): Uint8Array | null {
  const { gamma, reversedInk } = head;
  if (max === 255 && gamma === null && !reversedInk) return null;
  const tables = new Uint8Array((max + 1) * bands);
  for (let value = 0; value <= max; value++) {
    const share = value / max;
    const encoded = gamma === null ? share : encodeSrgb(share ** (1 / gamma));
    const colour = Math.round(255 * (reversedInk ? 1 - encoded : encoded));
    const plain = Math.round(255 * share);
    for (let band = 0; band < bands; band++) tables[value * bands + band] = band < colours ? colour : plain;
  }
  return tables;
}

/** The sRGB curve (IEC 61966-2-1) on 0..1. */
function encodeSrgb(light: number): number {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
}
