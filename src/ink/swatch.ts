import { exp, log } from './arithmetic.ts';
import { solveLinear } from './linear-system.ts';
import { type Spectrum, type Xyz, xyzOfSpectrum } from './spectrum.ts';
import { NO_SURFACE, opticsOf, type SurfaceOptics } from './surface.ts';
import { BANDS, D50, WEIGHTS } from './weights.ts';

export interface Swatch {
  /** The smoothest reflectance, every band within 0..1; shared, so not to be written to. */
  reflectance: Spectrum;
  /** True when no reflectance within 0..1 has the colour (fluorescent, metallic, mistyped): it was drawn
   * towards the grey of its lightness until one has, and wants measuring. */
  outsideModel: boolean;
}

interface State {
  /** Log odds of the body reflectance per band: 1 / (1 + e^-u). */
  u: Float64Array;
  /** One multiplier for each of X, Y, Z. */
  lambda: Xyz;
}

const NEWTON_STEPS = 40;
const LONGEST_STEP = 6;
const CLOSE_ENOUGH = 1e-13;
const SHORTEST_LEAP = 1 / 4096;
const MOST_LEAPS = 80;
/** Colours whose swatch is kept: a shelf of inks on a few papers, with what was measured of them. */
const MOST_KEPT = 4096;
/** A grey this near 0 or 1 is taken as flat 0 or 1. */
const END = 1e-9;

const bodyAt = (u: number): number => 1 / (1 + exp(-u));

/**
 * Newton equations of "least sum of squared slopes of u, with the XYZ given": the gradient of the
 * Lagrangian and the misfit of XYZ, as rows of coefficients with minus the residual last.
 */
function equations(target: Readonly<Xyz>, { u, lambda }: State, surface: SurfaceOptics): Float64Array[] {
  const size = BANDS + 3;
  const rows = Array.from({ length: size }, () => new Float64Array(size + 1));
  const bodies = u.map(bodyAt);
  for (let band = 0; band < BANDS; band++) {
    const row = rows[band]!;
    const weight = WEIGHTS[band]!;
    const body = bodies[band]!;
    const { slope: rise, bend } = surface.changeAt(body);
    const odds = body * (1 - body);
    const slope = rise * odds;
    const pull = weight[0] * lambda[0] + weight[1] * lambda[1] + weight[2] * lambda[2];
    let gradient = slope * pull;
    row[band] = (slope * (1 - 2 * body) + bend * odds * odds) * pull;
    for (const neighbour of [band - 1, band + 1]) {
      if (neighbour < 0 || neighbour >= BANDS) continue;
      row[band]! += 2;
      row[neighbour] = -2;
      gradient += 2 * (u[band]! - u[neighbour]!);
    }
    for (let c = 0; c < 3; c++) {
      row[BANDS + c] = slope * weight[c]!;
      rows[BANDS + c]![band] = slope * weight[c]!;
    }
    row[size] = -gradient;
  }
  const reached = xyzOfSpectrum(bodies.map(surface.readingOf));
  for (let c = 0; c < 3; c++) rows[BANDS + c]![size] = target[c]! - reached[c]!;
  return rows;
}

/** Newton from `start`; null when it does not settle. */
function settle(target: Readonly<Xyz>, start: State, surface: SurfaceOptics): State | null {
  let { u, lambda } = start;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const change = solveLinear(equations(target, { u, lambda }, surface));
    if (!change) return null;
    let longest = 0;
    for (let band = 0; band < BANDS; band++) longest = Math.max(longest, Math.abs(change[band]!));
    if (!Number.isFinite(longest)) return null;
    const share = Math.min(1, LONGEST_STEP / longest);
    u = u.map((value, band) => value + share * change[band]!);
    lambda = [
      lambda[0] + share * change[BANDS]!,
      lambda[1] + share * change[BANDS + 1]!,
      lambda[2] + share * change[BANDS + 2]!,
    ];
    const reached = xyzOfSpectrum(u.map((odds) => surface.readingOf(bodyAt(odds))));
    const misfit = Math.max(...reached.map((value, c) => Math.abs(value - target[c]!)));
    if (misfit < CLOSE_ENOUGH && longest < 1e-6) return { u, lambda };
  }
  return null;
}

const logOdds = (share: number): number => log(share / (1 - share));

const kept = new Map<string, Swatch>();

/**
 * `smoothestOf`, worked out once for a colour: a shelf's inks return in print after print.
 *
 * @param glare of the surface above, see `glareOf`: then the body beneath it is the smoothest, as ink's own
 *   reflectance is, and what is returned is what an instrument reads of it. Null: the reading itself is.
 */
export function swatchOf(xyz: Readonly<Xyz>, glare: number | null = null): Swatch {
  const key = `${xyz.join()} ${glare}`;
  const known = kept.get(key);
  if (known) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  const swatch = smoothestOf(xyz, glare === null ? NO_SURFACE : opticsOf(glare));
  kept.set(key, swatch);
  return swatch;
}

/**
 * The smoothest reflectance of a colour: least hyperbolic tangent slope squared.
 *
 * Minimises the squared slope of z with R = (tanh z + 1) / 2, which is the logistic of u = 2z, under the
 * three conditions that R has the wanted XYZ. Newton starts from the grey of the same lightness; where one
 * leap does not settle it goes there in shorter ones, and stays at the last that settled when the colour
 * lies beyond every reflectance.
 *
 * Source: S. A. Burns, "Numerical methods for smoothest reflectance reconstruction", Color Research &
 * Application 45 (2020), method LHTSS (from memory).
 *
 * @param xyz CIE XYZ, D50, Y = 1 white; any finite numbers.
 */
function smoothestOf(xyz: Readonly<Xyz>, surface: SurfaceOptics): Swatch {
  const lightness = xyz[1];
  const grey: Xyz = [D50[0] * lightness, lightness, D50[2] * lightness];
  const isGrey = xyz.every((value, c) => Math.abs(value - grey[c]!) < END);
  if (lightness <= END || lightness >= 1 - END || isGrey) {
    const flat = Math.min(1, Math.max(0, lightness));
    return { reflectance: new Float64Array(BANDS).fill(flat), outsideModel: !isGrey || flat !== lightness };
  }
  let state: State = {
    u: new Float64Array(BANDS).fill(logOdds(surface.bodyOf(lightness))),
    lambda: [0, 0, 0],
  };
  let reached = 0;
  let leap = 1;
  for (let tries = 0; tries < MOST_LEAPS && reached < 1 && leap >= SHORTEST_LEAP; tries++) {
    const next = Math.min(1, reached + leap);
    const target = xyz.map((value, c) => grey[c]! + next * (value - grey[c]!)) as Xyz;
    const settled = settle(target, state, surface);
    if (settled) {
      state = settled;
      reached = next;
    } else leap /= 2;
  }
  return { reflectance: state.u.map((odds) => surface.readingOf(bodyAt(odds))), outsideModel: reached < 1 };
}
