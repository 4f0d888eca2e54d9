import { type FitLevel, fitLevel, type Spread, spreadOn } from './fit-level.ts';
import { type Fit, UNMOVED } from './rough-place.ts';
import type { RoughPicture } from './shrink-rough.ts';

export interface FitRoughArgs {
  /** Labels of the drawing, 0 none. */
  labels: Uint32Array;
  width: number;
  height: number;
  rough: RoughPicture;
  /** Whether the rough has the drawing's shape, and so lies edge on edge before it is moved. */
  alike: boolean;
}

export interface FoundFit {
  fit: Fit;
  /** Part of the rough's variance of colour that lies between regions and not within them, at most 1. */
  explained: number;
  /** Variance within regions, against what is there when the rough is moved away a little: 1 says that the place does not matter. */
  sharpness: number;
}

/** Longest side of the drawing that fits are tried on, coarse to fine, px. */
const COARSE = 64;
const FINER = [128, 256, 384] as const;
/** Places tried on the coarsest. */
const SCALE_STEP = 1.07;
const SCALE_STEPS = { alike: 5, other: 8 } as const;
const SHIFTS = [-0.2, -0.16, -0.12, -0.08, -0.04, 0, 0.04, 0.08, 0.12, 0.16, 0.2];
const TURNS = [-5, -2.5, 0, 2.5, 5];
/** How many of them are followed up. */
const FOLLOWED = 6;
/** First steps on the next finer; a quarter of them on every other. */
const STEP = { scale: 0.03, shift: 0.016, turn: 1.2 } as const;
const HALVINGS = 3;
const MOST_ROUNDS = 60;
/** A fit must explain so much more than the rough unmoved to be taken instead. */
const WORTH = 0.01;
/** A fit that leaves less than this part of the variance in sight counts less. */
const LEAST_SHOWN = 0.25;
/** What a fit loses of its worth by covering nothing. */
const UNCOVERED = 0.3;
/** What a fit loses by being moved by the whole drawing, by twice the size, or by 20 degrees. */
const PULL = 0.02;
/** How far the rough is moved to see whether its place matters. */
const ASIDE = 0.06;

interface Try {
  fit: Fit;
  score: number;
}

/**
 * Looks for the place where a rough lies best on a drawing: where regions hold one colour each. All places on a coarse
 * grid, the best of them refined step by step on finer pictures. Deterministic.
 *
 * @returns null where the drawing has too few regions large enough, or the rough is of one colour
 */
export function fitRough({ labels, width, height, rough, alike }: FitRoughArgs): FoundFit | null {
  const level = (side: number) => fitLevel({ width, height, data: labels }, rough, alike, side);
  const coarse = level(COARSE);
  const finer = FINER.map(level);
  const finest = finer.at(-1)!;
  if (![coarse, ...finer].every(({ count, inner }) => count > 1 && inner >= 4 * count)) return null;
  if (spreadOn(finest)(UNMOVED).all === 0) return null;
  let tries = bestApart(placesFor(alike), scoreOn(coarse));
  finer.forEach((each, at) => {
    const score = scoreOn(each);
    const refined = tries.map(({ fit }) => climb(fit, score, 4 ** -at));
    tries = refined.sort((a, b) => b.score - a.score).slice(0, at === 0 ? 2 : 1);
  });
  const score = scoreOn(finest);
  const unmoved = { fit: UNMOVED, score: score(UNMOVED) };
  const best = tries[0]!.score > unmoved.score + WORTH ? tries[0]! : unmoved;
  const spread = spreadOn(finest);
  const here = spread(best.fit);
  return {
    fit: best.fit,
    explained: here.all === 0 ? 0 : 1 - here.within / here.all,
    sharpness: here.within / withinAside(best.fit, spread),
  };
}

/**
 * The part of variance between regions; less where hardly any colour is in sight, or not all regions are covered, and a
 * little less the more the rough is moved, so that it stays where its place says nothing.
 */
function scoreOn(level: FitLevel): (fit: Fit) => number {
  const spread = spreadOn(level);
  const least = spread(UNMOVED).all * LEAST_SHOWN;
  return (fit) => {
    const { covered, all, within } = spread(fit);
    if (all === 0) return 0;
    const moved =
      Math.abs(fit.scale - 1) + Math.abs(fit.shiftX) + Math.abs(fit.shiftY) + Math.abs(fit.turn) / 20;
    return ((all - within) / Math.max(all, least)) * (1 - UNCOVERED * (1 - covered)) - PULL * moved;
  };
}

function placesFor(alike: boolean): Fit[] {
  const most = alike ? SCALE_STEPS.alike : SCALE_STEPS.other;
  const scales = Array.from({ length: 2 * most + 1 }, (_, i) => powerOf(SCALE_STEP, i - most));
  return scales.flatMap((scale) =>
    TURNS.flatMap((turn) =>
      SHIFTS.flatMap((shiftX) => SHIFTS.map((shiftY) => ({ scale, shiftX, shiftY, turn }))),
    ),
  );
}

function powerOf(base: number, exponent: number): number {
  let power = 1;
  for (let i = 0; i < Math.abs(exponent); i++) power *= base;
  return exponent < 0 ? 1 / power : power;
}

/** The best places that do not lie side by side. */
function bestApart(places: readonly Fit[], score: (fit: Fit) => number): Try[] {
  const ranked = places.map((fit) => ({ fit, score: score(fit) })).sort((a, b) => b.score - a.score);
  const chosen: Try[] = [];
  for (const each of ranked) {
    if (chosen.length === FOLLOWED) break;
    if (!chosen.some(({ fit }) => beside(fit, each.fit))) chosen.push(each);
  }
  return chosen;
}

function beside(one: Fit, other: Fit): boolean {
  const ratio = one.scale / other.scale;
  return (
    Math.abs(one.shiftX - other.shiftX) < 0.05 &&
    Math.abs(one.shiftY - other.shiftY) < 0.05 &&
    Math.abs(one.turn - other.turn) < 3 &&
    ratio < 1.1 &&
    ratio > 0.9
  );
}

/** Takes the best single step as long as one betters the fit, then steps half as wide. */
function climb(from: Fit, score: (fit: Fit) => number, width: number): Try {
  let best: Try = { fit: from, score: score(from) };
  let reach = width;
  let halvings = 0;
  for (let round = 0; round < MOST_ROUNDS && halvings <= HALVINGS; round++) {
    const before = best;
    for (const fit of stepsFrom(before.fit, reach)) {
      const next = { fit, score: score(fit) };
      if (next.score > best.score) best = next;
    }
    if (best !== before) continue;
    reach /= 2;
    halvings++;
  }
  return best;
}

function stepsFrom(fit: Fit, reach: number): Fit[] {
  return [-reach, reach].flatMap((step) => [
    { ...fit, scale: fit.scale * (1 + step * STEP.scale) },
    { ...fit, shiftX: fit.shiftX + step * STEP.shift },
    { ...fit, shiftY: fit.shiftY + step * STEP.shift },
    { ...fit, turn: fit.turn + step * STEP.turn },
  ]);
}

/** Variance within regions with the rough moved aside, on average of four ways. */
function withinAside(fit: Fit, spread: (fit: Fit) => Spread): number {
  const moved = [-ASIDE, ASIDE].flatMap((by) => [
    { ...fit, shiftX: fit.shiftX + by },
    { ...fit, shiftY: fit.shiftY + by },
  ]);
  return Math.max(1e-9, moved.reduce((sum, each) => sum + spread(each).within, 0) / moved.length);
}
