import { sine } from '../../../src/ink/arithmetic.ts';
import type { Plane } from '../plane.ts';

/** Places along each side of a cell at which its threshold is known. */
const SIDE = 64;
const SIDE_BITS = 6;
/** One turn of a phase. */
const TURN = 2 ** 32;

export type Dot = 'round' | 'ellipse' | 'line';

/** How the phase within a cell grows from pixel to pixel, in whole parts of 2^32 of a cell. */
export interface ScreenAxes {
  ux: number;
  uy: number;
  vx: number;
  vy: number;
}

/** Axes of a screen; `angleDeg` anticlockwise from across the sheet, rows running down. */
export function screenAxes(lpi: number, angleDeg: number, ppi: number): ScreenAxes {
  const [sin, cos] = sineCosine(angleDeg);
  const step = (share: number) => Math.round((share * lpi * TURN) / ppi) | 0;
  return { ux: step(cos), uy: step(-sin), vx: step(sin), vy: step(cos) };
}

function sineCosine(deg: number): [number, number] {
  const turned = ((deg % 360) + 360) % 360;
  const quarter = Math.floor(turned / 90);
  const rest = ((turned - 90 * quarter) * Math.PI) / 180;
  const [sin, cos] = [sine(rest), sine(Math.PI / 2 - rest)];
  const turns = [
    [sin, cos],
    [cos, -sin],
    [-sin, -cos],
    [-cos, sin],
  ] as const;
  const [s, c] = turns[quarter]!;
  return [s, c];
}

/** A cosine of arcs of parabolas: 1 at 0, -1 at half a turn either way; `part` -0.5..0.5. */
function wave(part: number): number {
  const x = Math.abs(part);
  return x < 0.25 ? 1 - 16 * x * x : 16 * (0.5 - x) * (0.5 - x) - 1;
}

/** How much the second direction counts: alike for round dots, hardly at all for lines. */
const SECOND: Readonly<Record<Dot, number>> = { round: 1, ellipse: 0.7, line: 0.02 };

/**
 * Thresholds of one cell, `SIDE` x `SIDE`: the place that turns dark first has the least. Each is met by one place
 * alone, so that a tint covers its share of the cell; 65535 is above them all.
 */
export function cellThresholds(dot: Dot): Uint16Array {
  const count = SIDE * SIDE;
  const spot = Float64Array.from({ length: count }, (_, i) => {
    const [u, v] = [((i % SIDE) + 0.5) / SIDE - 0.5, (Math.floor(i / SIDE) + 0.5) / SIDE - 0.5];
    return wave(u) + SECOND[dot] * wave(v);
  });
  const order = [...spot.keys()].sort((a, b) => spot[b]! - spot[a]! || a - b);
  const thresholds = new Uint16Array(count);
  order.forEach((place, rank) => {
    thresholds[place] = Math.floor(((rank + 0.5) / count) * 65535);
  });
  return thresholds;
}

export interface ScreenAmArgs {
  /** From `enlarge`. */
  plate: Plane;
  out: Plane;
  /** Share of ink of every coverage, 0 none .. 65535 solid. */
  tone: Uint16Array;
  axes: ScreenAxes;
  /** From `cellThresholds`. */
  cell: Uint16Array;
}

/**
 * An AM screen of true ruling and angle, for rows `from..to`: every pixel looks its threshold up at its exact phase
 * within the cell, which runs on over the sheet in whole numbers and never has to fit the pixels. So the mean over
 * cells has more tones than a cell has pixels.
 *
 * Source: threshold screening, T. M. Holladay, Proc. SID 21 (1980); cells at irrational angles, R. Ulichney, Digital
 * Halftoning (1987) (both from memory).
 */
export function screenAm({ plate, out, tone, axes, cell }: ScreenAmArgs, from: number, to: number): void {
  const { width, data } = plate;
  const target = out.data;
  const shift = 32 - SIDE_BITS;
  for (let y = from; y < to; y++) {
    let u = Math.imul(y, axes.uy);
    let v = Math.imul(y, axes.vy);
    for (let i = y * width; i < (y + 1) * width; i++) {
      target[i] = tone[data[i]!]! > cell[((v >>> shift) << SIDE_BITS) | (u >>> shift)]! ? 255 : 0;
      u = (u + axes.ux) | 0;
      v = (v + axes.vx) | 0;
    }
  }
}
