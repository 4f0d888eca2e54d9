import { power } from './arithmetic.ts';
import type { Spectrum } from './spectrum.ts';
import { bodyOf, readingOf } from './surface.ts';

/** Take-up of an ink on wet ink of its own pass; fitted on offset printing. */
export const WET_ON_WET = 0.74;
/** Take-up on ink of an earlier pass when nothing else is known; an assumption, so a setting. */
export const DRY = 0.95;

/** A solid film of ink on the stock its colour is given on; body reflectances, beneath the surface. */
export interface Film {
  solid: Spectrum;
  stock: Spectrum;
  /** Surface glare of that stock, see `glareOf`. */
  glare: number;
  /** Contrast ratio 0..1: 0 pure transmission, 1 hides. */
  opacity: number;
}

/**
 * The film of an ink from readings of its solid and of the stock under it.
 *
 * @param solid reflectance of the solid on `stock`, 0..1 per band.
 * @param stock reflectance of that stock, 0..1 per band.
 * @param opacity contrast ratio 0..1.
 * @param glare surface glare of that stock.
 */
export function filmOf(solid: Spectrum, stock: Spectrum, opacity: number, glare: number): Film {
  const bodies = (read: Spectrum): Spectrum => read.map((reflectance) => bodyOf(reflectance, glare));
  return { solid: bodies(solid), stock: bodies(stock), glare, opacity };
}

/** Body reflectance over perfect black of ink that has `body` on its stock: what it scatters back itself. */
function overBlack(body: number, { opacity, glare }: Film): number {
  if (opacity === 0) return 0;
  return bodyOf(glare + opacity * (readingOf(body, glare) - glare), glare);
}

/**
 * A film laid upon what is already printed: body reflectance of both.
 *
 * Two-flux layers: the film reflects R0 itself and lets T2 through on the way down and up, with the light
 * thrown to and fro between film and ground: R0 + T2 under / (1 - R0 under). On its own stock a film taken
 * up fully gives its solid again; a film taken up less gives stock (solid / stock)^share there.
 *
 * Source: P. Kubelka and F. Munk (1931); P. Kubelka, layers upon grounds (1948) (from memory). Take-up as
 * an exponent of the film's transmission, relieved by opacity, is this project's own choice.
 *
 * @param takeUp 0..1, how fully the film is taken on; 1 for the first ink down.
 */
export function layUpon(under: Spectrum, film: Film, takeUp: number): Spectrum {
  const share = power(takeUp, 1 - film.opacity);
  return under.map((ground, band) => {
    const stock = film.stock[band]!;
    const taken = stock * power(film.solid[band]! / stock, share);
    const own = overBlack(taken, film);
    const through = ((taken - own) * (1 - own * stock)) / stock;
    return Math.min(1, own + (through * ground) / (1 - own * ground));
  });
}
