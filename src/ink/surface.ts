import type { Surface } from '../graph/inks.ts';
import type { Spectrum } from './spectrum.ts';

/** Share of the light inside the sheet that its surface throws back inside. */
const INNER = 0.9;
/** Share of the light that the surface reflects into the eye before it reaches the ink. */
const GLARE: Record<Surface, number> = { coated: 0.005, uncoated: 0.04, newsprint: 0.025 };
/** Glare stays below this share of the darkest band, or ink would absorb more than all light. */
const GLARE_LIMIT = 0.8;
/** Keeps ratios of body reflectances finite for a perfect black; far below what a proof can show. */
const LEAST_BODY = 1e-9;

/** Surface glare for a print: the kind of surface sets it, the darkest of its solids and papers caps it. */
export function glareOf(surface: Surface, spectra: readonly Spectrum[]): number {
  const darkest = Math.min(...spectra.map((spectrum) => Math.min(...spectrum)));
  return Math.min(GLARE[surface], GLARE_LIMIT * darkest);
}

/**
 * Reflectance of the body beneath the surface, from the reflectance an instrument reads; 0..1 both.
 *
 * Source: J. L. Saunderson, "Calculation of the color of pigmented plastics", J. Opt. Soc. Am. 32 (1942)
 * (from memory), with the surface constants fitted on the print conditions in tests/outside/colour.
 */
export function bodyOf(read: number, glare: number): number {
  const r = (read - glare) / (1 - glare);
  return Math.max(LEAST_BODY, r / (1 - INNER + INNER * r));
}

/** The inverse of `bodyOf`: what an instrument reads of a body reflectance. */
export function readingOf(body: number, glare: number): number {
  return glare + ((1 - glare) * (1 - INNER) * body) / (1 - INNER * body);
}

/** A surface as a function of the body reflectance beneath it. */
export interface SurfaceOptics {
  bodyOf(read: number): number;
  readingOf(body: number): number;
  /** First and second derivative of `readingOf`. */
  changeAt(body: number): { slope: number; bend: number };
}

/** No surface: body and reading are one. */
export const NO_SURFACE: SurfaceOptics = {
  bodyOf: (read) => read,
  readingOf: (body) => body,
  changeAt: () => ({ slope: 1, bend: 0 }),
};

/** The surface of `bodyOf` and `readingOf`. */
export const opticsOf = (glare: number): SurfaceOptics => ({
  bodyOf: (read) => bodyOf(read, glare),
  readingOf: (body) => readingOf(body, glare),
  changeAt: (body) => {
    const rest = 1 - INNER * body;
    const slope = ((1 - glare) * (1 - INNER)) / (rest * rest);
    return { slope, bend: (2 * INNER * slope) / rest };
  },
});
