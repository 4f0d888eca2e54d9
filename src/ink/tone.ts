import { type Spectrum, xyzOfSpectrum } from './spectrum.ts';

/** A point of a film-to-print curve: nominal tint on the plate, tone value read on paper; both 0..1. */
export type TonePoint = readonly [film: number, print: number];

/**
 * How a tint of one ink reads, on the tristimulus value V that the ink changes most:
 * V(a) = (1-a)^2 paper + 2 a (1-a) between + a^2 solid, which is Yule-Nielsen n = 2 summed over the bands.
 */
export interface ToneScale {
  paper: number;
  solid: number;
  between: number;
}

/** The tone scale of a solid on its paper, both as reflectances. */
export function toneScaleOf(paper: Spectrum, solid: Spectrum): ToneScale {
  const papers = xyzOfSpectrum(paper);
  const solids = xyzOfSpectrum(solid);
  const betweens = xyzOfSpectrum(paper.map((value, band) => Math.sqrt(value * solid[band]!)));
  const changes = papers.map(
    (value, axis) => Math.abs(value - solids[axis]!) / Math.max(value, solids[axis]!),
  );
  const axis = changes.indexOf(Math.max(...changes)) as 0 | 1 | 2;
  return { paper: papers[axis], solid: solids[axis], between: betweens[axis] };
}

/**
 * Tone value an instrument reads, 0..1, where ink covers `coverage` of the paper: Murray-Davies,
 * (paper - tint) / (paper - solid). Undefined for an ink that cannot be told from its paper.
 *
 * Source: A. Murray, J. Franklin Institute 221 (1936) (from memory).
 */
export function toneOfCoverage({ paper, solid, between }: ToneScale, coverage: number): number {
  const bare = 1 - coverage;
  const tint = bare * bare * paper + 2 * coverage * bare * between + coverage * coverage * solid;
  return (paper - tint) / (paper - solid);
}

/** Coverage of the paper at which an instrument reads `tone`, both 0..1: `toneOfCoverage` turned round. */
export function coverageOfTone({ paper, solid, between }: ToneScale, tone: number): number {
  if (paper === solid) return tone;
  const fall = tone * (paper - solid);
  const slope = paper - between;
  const bend = paper - 2 * between + solid;
  const root = Math.sqrt(Math.max(0, slope * slope - bend * fall));
  return Math.min(1, Math.max(0, fall / (slope + (paper > solid ? root : -root))));
}

/**
 * Dot gain g from the tone gain read at 50%: `increase` 0.15 means that a 50% tint reads 65%. Negative
 * where the print grows less than optics alone would make it.
 */
export function gainOfToneIncrease(scale: ToneScale, increase: number): number {
  return coverageOfTone(scale, 0.5 + increase) - 0.5;
}

/** Straight lines between the points of a curve, and from 0, 0 and to 1, 1 beyond its ends. */
export function alongCurve(points: readonly TonePoint[], film: number): number {
  let [fromFilm, fromPrint]: TonePoint = [0, 0];
  for (const [toFilm, toPrint] of [...points, [1, 1] as const]) {
    if (film <= toFilm && toFilm > fromFilm) {
      return fromPrint + ((toPrint - fromPrint) * (film - fromFilm)) / (toFilm - fromFilm);
    }
    fromFilm = toFilm;
    fromPrint = toPrint;
  }
  return fromPrint;
}
