import { depth } from '../depth.ts';
import { columnDistance } from '../distance.ts';
import { sineAndCosine } from '../turn.ts';
import { type Complex, fourier } from './fourier.ts';

/** Line coverage, 0..255. */
export interface Lines {
  width: number;
  height: number;
  data: Uint8Array;
}

/**
 * How the old drawing lies on the new one: about the middles of both, an old place times `scale`, turned clockwise by
 * `turn` degrees, moved by `x`, `y` px of the new drawing is the new place.
 */
export interface Alignment {
  scale: number;
  turn: number;
  x: number;
  y: number;
}

export interface AlignArgs {
  before: Lines;
  after: Lines;
  /** Pixels of the new drawing to one of the old, where nothing was redrawn larger or smaller. */
  ratio: number;
}

const SIDE = 128;
const SCALES = [0.94, 0.96, 0.98, 1, 1.02, 1.04, 1.06] as const;
const TURNS = [-3, -2, -1, 0, 1, 2, 3] as const;
/** Longest side that the fit is bettered on, px, and so many places of line at most. */
const FINE = 1000;
const MOST_PLACES = 6000;
/** Line farther apart than this counts no more, px of the fine picture. */
const CUT_OFF = 20;
const LINE = 128;

/**
 * Finds how an old drawing lies on a new one: phase correlation of line density on a square of 128 over some scales
 * and turns, then the fit of old line to new by its mean distance, bettered step by step.
 *
 * Sources: C. D. Kuglin, D. C. Hines, Proc. IEEE Int. Conf. Cybernetics and Society (1975) 163-165, phase
 * correlation; H. G. Barrow et al., Proc. 5th IJCAI (1977) 659-663, chamfer matching (both from memory).
 */
export function alignLines({ before, after, ratio }: AlignArgs): Alignment & { distance: number } {
  const reach = Math.max(before.width * ratio, before.height * ratio, after.width, after.height) * 1.1;
  const start = correlate(before, after, ratio, reach);
  return better(before, after, ratio, start);
}

/** Places of line from the middle of a drawing, px: x, y, one after another. */
function linePlaces({ width, height, data }: Lines): Float64Array {
  const step = Math.max(1, Math.floor(Math.min(width, height) / 1024));
  const places: number[] = [];
  for (let y = step >> 1; y < height; y += step)
    for (let x = step >> 1; x < width; x += step)
      if (data[y * width + x]! >= LINE) places.push(x + 0.5 - width / 2, y + 0.5 - height / 2);
  return Float64Array.from(places);
}

/** How much line lies in each cell of a square of `reach` px of the new drawing about its middle. */
function density(places: Float64Array, reach: number, turn: number, scale: number): Float64Array {
  const out = new Float64Array(SIDE * SIDE);
  const [sine, cosine] = sineAndCosine(turn);
  const c = (cosine * scale * SIDE) / reach;
  const s = (sine * scale * SIDE) / reach;
  for (let i = 0; i < places.length; i += 2) {
    const u = Math.floor(c * places[i]! - s * places[i + 1]! + SIDE / 2);
    const v = Math.floor(s * places[i]! + c * places[i + 1]! + SIDE / 2);
    if (u >= 0 && v >= 0 && u < SIDE && v < SIDE) out[v * SIDE + u]!++;
  }
  return out;
}

function correlate(before: Lines, after: Lines, ratio: number, reach: number): Alignment {
  const transform = fourier(SIDE);
  const spectrum = (values: Float64Array): Complex => {
    const square = { re: values.slice(), im: new Float64Array(values.length) };
    transform(square, false);
    return square;
  };
  const wanted = spectrum(density(linePlaces(after), reach, 0, 1));
  const places = linePlaces(before);
  let best = { scale: 1, turn: 0, x: 0, y: 0, peak: -1 };
  for (const scale of SCALES)
    for (const turn of TURNS) {
      const seen = spectrum(density(places, reach, turn, ratio * scale));
      whiten(seen, wanted);
      transform(seen, true);
      let at = 0;
      seen.re.forEach((value, i) => {
        if (value > seen.re[at]!) at = i;
      });
      if (seen.re[at]! <= best.peak) continue;
      const wrapped = (cell: number) => (cell >= SIDE / 2 ? cell - SIDE : cell);
      const cell = reach / SIDE;
      const [x, y] = [wrapped(at % SIDE) * cell, wrapped(Math.floor(at / SIDE)) * cell];
      best = { scale, turn, x, y, peak: seen.re[at]! };
    }
  const { scale, turn, x, y } = best;
  return { scale, turn, x, y };
}

/** Phases of `wanted` against those of `seen`, strengths all one; into `seen`. */
function whiten(seen: Complex, wanted: Complex): void {
  for (let i = 0; i < seen.re.length; i++) {
    const re = wanted.re[i]! * seen.re[i]! + wanted.im[i]! * seen.im[i]!;
    const im = wanted.im[i]! * seen.re[i]! - wanted.re[i]! * seen.im[i]!;
    const strength = Math.sqrt(re * re + im * im) + 1e-6;
    seen.re[i] = re / strength;
    seen.im[i] = im / strength;
  }
}

/** Distance of every pixel from the line at 1/step, cut off. */
function distances({ width, height, data }: Lines, step: number): Lines {
  const small = { width: Math.ceil(width / step), height: Math.ceil(height / step) };
  const line = new Uint8Array(small.width * small.height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (data[y * width + x]! >= LINE) line[Math.floor(y / step) * small.width + Math.floor(x / step)] = 255;
  const columns = new Uint16Array(line.length);
  const sites = { lowest: 255, highest: 255, limit: CUT_OFF + 1, framed: false };
  columnDistance({ data: line, ...small, ...sites, out: columns }, 0, small.width);
  const table = Uint8Array.from({ length: CUT_OFF * CUT_OFF + 1 }, (_, d2) => Math.round(Math.sqrt(d2) * 10));
  const out = new Uint8Array(line.length);
  depth({ columns, width: small.width, table, beyond: CUT_OFF * 10, out }, 0, small.height);
  return { ...small, data: out };
}

/** Takes single steps of scale, turn and shift as long as one brings old line nearer to new. */
function better(
  before: Lines,
  after: Lines,
  ratio: number,
  start: Alignment,
): Alignment & { distance: number } {
  const step = Math.max(1, Math.ceil(Math.max(after.width, after.height) / FINE));
  const map = distances(after, step);
  const places = placesOf(before);
  const long = Math.max(after.width, after.height);
  const distance = ({ scale, turn, x, y }: Alignment) => {
    const [sine, cosine] = sineAndCosine(turn);
    let sum = 0;
    for (const [px, py] of places) {
      const [dx, dy] = [(px - before.width / 2) * ratio * scale, (py - before.height / 2) * ratio * scale];
      const u = Math.floor((cosine * dx - sine * dy + x + after.width / 2) / step);
      const v = Math.floor((sine * dx + cosine * dy + y + after.height / 2) / step);
      const inside = u >= 0 && v >= 0 && u < map.width && v < map.height;
      sum += inside ? map.data[v * map.width + u]! : CUT_OFF * 10;
    }
    return (sum * step) / (10 * Math.max(1, places.length));
  };
  let best = start;
  let least = distance(best);
  for (let reach = 1; reach > 0.02; reach /= 1.6) {
    for (let round = 0; round < 12; round++) {
      const before2 = least;
      for (const next of stepsFrom(best, reach, long)) {
        const found = distance(next);
        if (found >= least - 1e-9) continue;
        least = found;
        best = next;
      }
      if (least === before2) break;
    }
  }
  return { ...best, distance: least };
}

function stepsFrom(at: Alignment, reach: number, long: number): Alignment[] {
  const shift = 0.006 * reach * long;
  return [-1, 1].flatMap((way) => [
    { ...at, x: at.x + way * shift },
    { ...at, y: at.y + way * shift },
    { ...at, scale: at.scale * (1 + way * 0.012 * reach) },
    { ...at, turn: at.turn + way * 0.6 * reach },
  ]);
}

/** Places of line, spread over the whole drawing. */
function placesOf({ width, height, data }: Lines): [number, number][] {
  let count = 0;
  for (let i = 0; i < data.length; i += 7) if (data[i]! >= LINE) count++;
  const every = Math.max(1, Math.floor(count / MOST_PLACES));
  const places: [number, number][] = [];
  let seen = 0;
  for (let i = 0; i < width * height; i += 7)
    if (data[i]! >= LINE && seen++ % every === 0)
      places.push([(i % width) + 0.5, Math.floor(i / width) + 0.5]);
  return places;
}
