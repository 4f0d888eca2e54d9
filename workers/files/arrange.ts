import type { RasterHead } from './heads/raster.ts';

const COLOUR_SAMPLES = { grey: 1, rgb: 3, cmyk: 4 };

/** How the samples of a source pixel lie, and what the target wants of them. */
export interface Arrangement {
  /** Samples of one source pixel. */
  from: number;
  /** Samples of colour in the source: 1, 3, or 4 for CMYK. */
  colours: number;
  /** Whether straight alpha stands behind the colours. */
  alpha: boolean;
  /** Bands of one target pixel. */
  to: number;
}

/**
 * The arrangement for a picture whose decoder hands out `from` samples a pixel; null where these cannot
 * hold what the header says. A palette of greys may come as grey.
 */
export function arrangementOf(head: RasterHead, from: number): Arrangement | null {
  const colours = head.colour === 'rgb' && from <= 2 ? 1 : COLOUR_SAMPLES[head.colour];
  if (from < colours) return null;
  return {
    from,
    colours,
    alpha: head.alpha && from > colours,
    to: (head.colour === 'grey' ? 1 : 3) + (head.alpha ? 1 : 0),
  };
}

/** Writes whole 8-bit source pixels into `target` from byte `at` on, as grey or RGB; alpha that is missing is 255. */
export function arrange(source: Uint8Array, how: Arrangement, target: Uint8Array, at: number): void {
  const { from, colours, alpha, to } = how;
  if (from === to && colours !== 4) {
    target.set(source, at);
    return;
  }
  const wantsAlpha = to % 2 === 0;
  const shown = wantsAlpha ? to - 1 : to;
  let out = at;
  for (let i = 0; i < source.length; i += from) {
    const light = colours === 4 ? 255 - source[i + 3]! : 255;
    for (let c = 0; c < shown; c++) {
      const value = source[colours === 1 ? i : i + c]!;
      target[out++] = colours === 4 ? ((255 - value) * light + 127) / 255 : value;
    }
    if (wantsAlpha) target[out++] = alpha ? source[i + colours]! : 255;
  }
}
