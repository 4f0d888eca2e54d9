/** Found regions against the true ones of one drawing. */
export interface Score {
  /** True regions. */
  regions: number;
  /** True regions that some found region covers with IoU >= .95. */
  good: number;
  /** Found regions above the smallest size that are the best of no true region. */
  surplus: number[];
  /** True regions that share every found region with a larger part of another one. */
  lost: number[];
  /** Borders cut open. */
  cuts: number;
  /** Indices of cut borders whose two regions came out as one. */
  leaks: number[];
  /** Best IoU by true region; index 0 unused. */
  iou: Float64Array;
}

export interface ScoreArgs {
  /** True region by pixel, 1..count; 0 where nothing is known: these pixels count for no IoU. */
  truth: Uint32Array;
  count: number;
  /** Found region by pixel. */
  found: Uint32Array;
  /** Whether a pixel of the drawing as given is paper. */
  isFree: (pixel: number) => boolean;
  /** px */
  smallest: number;
  /** Pairs of true regions that a cut joins. */
  cuts: readonly (readonly [number, number])[];
}

const GOOD = 0.95;

export function scoreOf({ truth, count, found, isFree, smallest, cuts }: ScoreArgs): Score {
  const most = found.reduce((top, label) => Math.max(top, label), 0);
  const shared = new Uint32Array((count + 1) * (most + 1));
  const free = new Uint32Array(most + 1);
  for (let i = 0; i < truth.length; i++) {
    if (!isFree(i)) continue;
    shared[truth[i]! * (most + 1) + found[i]!]!++;
    free[found[i]!]!++;
  }
  const sharedBy = (t: number, f: number) => shared[t * (most + 1) + f]!;
  const trueArea = new Float64Array(count + 1);
  const foundArea = new Float64Array(most + 1);
  for (let t = 1; t <= count; t++)
    for (let f = 0; f <= most; f++) {
      trueArea[t]! += sharedBy(t, f);
      foundArea[f]! += sharedBy(t, f);
    }

  const iou = new Float64Array(count + 1);
  const best = new Uint32Array(count + 1);
  const main = new Uint32Array(count + 1);
  const owner = new Uint32Array(most + 1);
  for (let t = 1; t <= count; t++)
    for (let f = 1; f <= most; f++) {
      const both = sharedBy(t, f);
      if (both === 0) continue;
      const ratio = both / (trueArea[t]! + foundArea[f]! - both);
      if (ratio > iou[t]!) {
        iou[t] = ratio;
        best[t] = f;
      }
      if (both > sharedBy(t, main[t]!) || main[t] === 0) main[t] = f;
      if (owner[f] === 0 || both > sharedBy(owner[f]!, f)) owner[f] = t;
    }

  const wanted = new Set(best);
  const owned = new Set(owner);
  const numbers = (last: number) => Array.from({ length: last }, (_, i) => i + 1);
  return {
    regions: count,
    good: iou.reduce((sum, ratio) => sum + (ratio >= GOOD ? 1 : 0), 0),
    surplus: numbers(most).filter((f) => free[f]! >= smallest && !wanted.has(f)),
    lost: numbers(count).filter((t) => !owned.has(t)),
    cuts: cuts.length,
    leaks: [...cuts.keys()].filter((k) => main[cuts[k]![0]] === main[cuts[k]![1]]),
    iou,
  };
}

/** Sums over drawings, as the tables show them. */
export interface Total {
  drawings: number;
  regions: number;
  cuts: number;
  leaksPercent: number;
  goodPercent: number;
  surplusEach: number;
  lost: number;
}

export function totalOf(scores: readonly Score[]): Total {
  const sum = (of: (score: Score) => number) => scores.reduce((total, score) => total + of(score), 0);
  const regions = sum((score) => score.regions);
  const cuts = sum((score) => score.cuts);
  return {
    drawings: scores.length,
    regions,
    cuts,
    leaksPercent: cuts === 0 ? 0 : (100 * sum((score) => score.leaks.length)) / cuts,
    goodPercent: (100 * sum((score) => score.good)) / regions,
    surplusEach: sum((score) => score.surplus.length) / scores.length,
    lost: sum((score) => score.lost.length),
  };
}
