import { decodeSrgb, encodeSrgb } from '../../src/ink/srgb.ts';

const STEPS = 4096;

/** Linear light of every screen byte. */
export const LIGHT = Float64Array.from({ length: 256 }, (_, v) => decodeSrgb(v / 255));

/** Screen bytes of linear light 0..1 in equal steps. */
export const ENCODING = Uint8Array.from({ length: STEPS }, (_, i) =>
  Math.round(255 * encodeSrgb(i / (STEPS - 1))),
);
