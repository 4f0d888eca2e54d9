import { EDGE_ON_EDGE, type Fit, roughPlace, sameShape } from './rough-place.ts';
import type { RoughPicture } from './shrink-rough.ts';

export interface FitRoughArgs {
  /** Labels of the drawing, 0 none. */
  labels: Uint32Array;
  width: number;
  height: number;
  count: number;
  rough: RoughPicture;
}

export interface RoughFit {
  fit: Fit;
  /** Share of the rough's variance of colour that lies between regions, by how much of the drawing it covers, 0..1. */
  explained: number;
  /** The same with the rough laid edge on edge. */
  explainedByFrame: number;
}

/** Longest side that a fit is looked for on, coarse to fine, px. */
const SIZES = [72, 144, 288] as const;
/** First steps of scale, shift and turn on the coarsest; half as wide on every next. */
const STEPS = { scale: 0.04, shift: 0.02, turn: 1 } as const;
const ROUNDS = 24;
const LEAST_SCALE = 0.7;
const MOST_SCALE = 1.45;
const MOST_TURN = 12;
const MOST_SHIFT = 0.3;

/** What is white, where the rough has nothing. */
const WHITE = 255;

/** A drawing's labels, sampled. */
interface Sampled {
  labels: Int32Array;
  width: number;
  height: number;
  count: number;
}

/**
 * Looks for the place where a rough lies best on a drawing: where regions hold one colour each. Judged by the
 * variance of colour within regions against all of it, from edge on edge outwards, coarse to fine. Deterministic.
 */
export function fitRough({ labels, width, height, count, rough }: FitRoughArgs): RoughFit {
  const pyramid = SIZES.map((size) => sampled(labels, width, height, size));
  const starts = startsFor(sameShape({ width, height }, rough));
  const first = pyramid[0]!;
  let best = starts.reduce(
    (so, fit) => {
      const explained = explainedBy(first, rough, fit);
      return explained > so.explained + 1e-9 ? { fit, explained } : so;
    },
    { fit: EDGE_ON_EDGE, explained: -1 },
  );
  pyramid.forEach((level, at) => {
    best = climb(level, rough, best.fit, 1 / 2 ** at);
  });
  const last = pyramid.at(-1)!;
  return { ...best, explainedByFrame: explainedBy(last, rough, EDGE_ON_EDGE) };

  function sampled(all: Uint32Array, w: number, h: number, size: number): Sampled {
    const step = Math.max(1, Math.max(w, h) / size);
    const [toWidth, toHeight] = [Math.max(1, Math.floor(w / step)), Math.max(1, Math.floor(h / step))];
    const small = new Int32Array(toWidth * toHeight);
    for (let y = 0; y < toHeight; y++)
      for (let x = 0; x < toWidth; x++)
        small[y * toWidth + x] = all[Math.floor((y + 0.5) * step) * w + Math.floor((x + 0.5) * step)]!;
    return { labels: small, width: toWidth, height: toHeight, count };
  }
}

/** Edge on edge alone for pictures of one shape; for others also larger, smaller and moved. */
function startsFor(alike: boolean): Fit[] {
  if (alike) return [EDGE_ON_EDGE];
  const steps = [-0.2, -0.1, 0, 0.1, 0.2];
  return [0.8, 0.9, 1, 1.12, 1.25].flatMap((scale) =>
    steps.flatMap((shiftX) => steps.map((shiftY) => ({ scale, shiftX, shiftY, turn: 0 }))),
  );
}

/** Takes the best single step as long as one betters the fit, with steps ever smaller. */
function climb(
  level: Sampled,
  rough: RoughPicture,
  from: Fit,
  size: number,
): { fit: Fit; explained: number } {
  let fit = from;
  let explained = explainedBy(level, rough, fit);
  let reach = size;
  for (let round = 0; round < ROUNDS && reach > size / 8; round++) {
    const tried = neighboursOf(fit, reach).map((next) => ({
      fit: next,
      explained: explainedBy(level, rough, next),
    }));
    const best = tried.reduce((so, each) => (each.explained > so.explained + 1e-9 ? each : so), {
      fit,
      explained,
    });
    if (best.fit === fit) reach /= 2;
    fit = best.fit;
    explained = best.explained;
  }
  return { fit, explained };
}

function neighboursOf(fit: Fit, reach: number): Fit[] {
  const steps = [-1, 1].flatMap((way) => [
    { ...fit, scale: fit.scale * (1 + way * reach * STEPS.scale) },
    { ...fit, shiftX: fit.shiftX + way * reach * STEPS.shift },
    { ...fit, shiftY: fit.shiftY + way * reach * STEPS.shift },
    { ...fit, turn: fit.turn + way * reach * STEPS.turn },
  ]);
  return steps.filter(
    ({ scale, turn, shiftX, shiftY }) =>
      scale >= LEAST_SCALE &&
      scale <= MOST_SCALE &&
      Math.abs(turn) <= MOST_TURN &&
      Math.abs(shiftX) <= MOST_SHIFT &&
      Math.abs(shiftY) <= MOST_SHIFT,
  );
}

/**
 * Share of the variance of colour that lies between regions when the rough is laid on so, times the share of the
 * drawing that it covers: beside the drawing it explains nothing.
 */
function explainedBy({ labels, width, height, count }: Sampled, rough: RoughPicture, fit: Fit): number {
  const { xx, xy, x0, yx, yy, y0 } = roughPlace({ width, height }, rough, fit);
  const sums = new Float64Array((count + 1) * 3);
  const many = new Float64Array(count + 1);
  let squares = 0;
  let covered = 0;
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) {
      const label = labels[i]!;
      if (label === 0) continue;
      const column = Math.floor(xx * x + xy * y + x0);
      const row = Math.floor(yx * x + yy * y + y0);
      const inside = column >= 0 && row >= 0 && column < rough.width && row < rough.height;
      const at = (row * rough.width + column) * 4;
      const shown = inside ? rough.rgba[at + 3]! : 0;
      if (inside) covered++;
      for (let band = 0; band < 3; band++) {
        const value = shown === 0 ? WHITE : WHITE + ((rough.rgba[at + band]! - WHITE) * shown) / 255;
        sums[label * 3 + band]! += value;
        squares += value * value;
      }
      many[label]!++;
    }
  const all = [0, 0, 0];
  let total = 0;
  let between = 0;
  for (let label = 1; label <= count; label++) {
    if (many[label] === 0) continue;
    for (let band = 0; band < 3; band++) {
      const sum = sums[label * 3 + band]!;
      all[band]! += sum;
      between += (sum * sum) / many[label]!;
    }
    total += many[label]!;
  }
  const mean = all.reduce((sum, value) => sum + (value * value) / Math.max(1, total), 0);
  const variance = squares - mean;
  return variance <= 1e-6 ? 0 : ((between - mean) / variance) * (covered / total);
}
