import type { Plane } from './plane.ts';
import { NO_RIDGE, ridgeAt, ringSteps, SHARP } from './ridge.ts';

export interface ThinRunsArgs {
  /** Depth of every pixel in steps, 0 outside, 255 for deeper than is measured. */
  depth: Plane;
  /** Steps to a pixel. */
  perPx: number;
  /** What is narrower counts, px. */
  leastPx: number;
  /** Runs shorter than this do not: corners taper too, px. */
  shortestPx: number;
}

export interface ThinRunsFound {
  count: number;
  /** Along the middles of all runs, at least, px. */
  lengthPx: number;
  /** Of the thinnest run, in its middle: every run narrows towards its ends. */
  thinnestPx: number;
  /** A pixel of the longest run. */
  longest: readonly [number, number];
}

/** Runs along the middle of lines that are narrower than `leastPx` (medial axis of the distance; Blum 1967). */
export function thinRuns(args: ThinRunsArgs): ThinRunsFound {
  const { perPx, leastPx, shortestPx } = args;
  const { width, height, data } = args.depth;
  const steps = ringSteps(width);
  const most = ((leastPx + 1) / 2) * perPx;
  const thin = new Set<number>();
  for (let y = 1; y + 1 < height; y++)
    for (let x = 1, i = y * width + 1; x + 1 < width; x++, i++) {
      if (data[i] === 0 || data[i]! > most) continue;
      const ridge = ridgeAt(data, i, steps);
      if (ridge !== NO_RIDGE && widthAt(data[i]!, ridge, perPx) < leastPx) thin.add(i);
    }
  return runsOf(thin, args.depth, steps, perPx, shortestPx);
}

function widthAt(depth: number, ridge: number, perPx: number): number {
  return (2 * depth) / perPx - (ridge === SHARP ? 1 : 0);
}

/** Middles of slanting and curved lines have gaps; what lies this near goes on, px. */
const REACH = 5;

function runsOf(
  thin: Set<number>,
  { width, data }: Plane,
  steps: readonly number[],
  perPx: number,
  shortestPx: number,
): ThinRunsFound {
  const found = {
    count: 0,
    lengthPx: 0,
    thinnestPx: Number.POSITIVE_INFINITY,
    longest: [0, 0] as [number, number],
  };
  const near = stepsAround(width);
  let most = 0;
  for (const first of thin) {
    thin.delete(first);
    const run = [first];
    for (let next = 0; next < run.length; next++)
      for (const step of near) if (thin.delete(run[next]! + step)) run.push(run[next]! + step);
    const ridges = run.map((i) => ridgeAt(data, i, steps));
    const pixels = ridges.reduce((sum, ridge) => sum + (ridge === SHARP ? 1 : 0.5), 0);
    const length = Math.max(pixels, sideOf(run, width));
    if (length < shortestPx) continue;
    found.count++;
    found.lengthPx += length;
    const widths = run.map((i, k) => widthAt(data[i]!, ridges[k]!, perPx)).sort((a, b) => a - b);
    found.thinnestPx = Math.min(found.thinnestPx, widths[widths.length >> 1]!);
    if (length <= most) continue;
    most = length;
    const middle = run[Math.floor(run.length / 2)]!;
    found.longest = [middle % width, Math.floor(middle / width)];
  }
  return found;
}

function stepsAround(width: number): number[] {
  const reach = Array.from({ length: 2 * REACH + 1 }, (_, i) => i - REACH);
  return reach.flatMap((dy) => reach.map((dx) => dy * width + dx)).filter((step) => step !== 0);
}

/** The longer side of a run's box. */
function sideOf(run: readonly number[], width: number): number {
  const columns = run.map((i) => i % width);
  const rows = run.map((i) => Math.floor(i / width));
  const across = (places: readonly number[]) => {
    const least = places.reduce((a, b) => Math.min(a, b));
    return places.reduce((a, b) => Math.max(a, b)) - least + 1;
  };
  return Math.max(across(columns), across(rows));
}
