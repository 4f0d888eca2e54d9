import type { Plane } from '../plane.ts';

export interface EnlargeArgs {
  from: Plane;
  /** `times` as wide and as high. */
  out: Plane;
  times: number;
}

/** How far around a pixel its soft edge may reach, px. */
const AROUND = 2;
/** Within so few pixels a difference of so much is an edge, not a fade. */
const STEEP = 80;
/** Levels so near an extreme count as it. */
const NEAR = 8;
/** With fewer pixels than this an extreme is the peak of a thin line, not a tint. */
const THIN = 8;

/**
 * Brings a plate to the pixels of a device, for rows `from..to` of the device: coverage between the pixels is sampled
 * in a straight line from one to the next, and where that is the soft edge of a line or a fill, what is more than
 * half way to the other side counts as it. So edges are hard and lie where they lay, tints and fades stay.
 */
export function enlarge({ from: source, out, times }: EnlargeArgs, from: number, to: number): void {
  const { width, height, data } = source;
  const target = out.data;
  for (let row = from; row < to; row++) {
    const y = Math.floor(row / times);
    const inner = y >= AROUND && y + AROUND < height;
    const down = (row - y * times + 0.5) / times - 0.5;
    let at = row * width * times;
    for (let x = 0; x < width; x++, at += times) {
      const i = y * width + x;
      const own = data[i]!;
      if (inner && x > 0 && x + 1 < width && isBroad(data, i, width, own)) {
        for (let k = 0; k < times; k++) target[at + k] = own;
        continue;
      }
      const sides = sidesOf(source, x, y);
      for (let k = 0; k < times; k++) {
        const value = between(source, x, y, (k + 0.5) / times - 0.5, down);
        target[at + k] =
          sides === null ? Math.round(value) : value * 2 >= sides.low + sides.high ? sides.dark : sides.light;
      }
    }
  }
}

/** Whether a pixel has its like beside it and above or below it: a tint or a solid, not the soft edge of one. */
function isBroad(data: Uint8Array, i: number, width: number, own: number): boolean {
  return (data[i - 1] === own || data[i + 1] === own) && (data[i - width] === own || data[i + width] === own);
}

/** What stands on either side of an edge: extremes, and what they are to print as; null where there is no edge. */
function sidesOf({ width, height, data }: Plane, x: number, y: number) {
  const left = Math.max(0, x - AROUND);
  const right = Math.min(width - 1, x + AROUND);
  const top = Math.max(0, y - AROUND);
  const bottom = Math.min(height - 1, y + AROUND);
  let low = 255;
  let high = 0;
  for (let v = top; v <= bottom; v++)
    for (let i = v * width + left; i <= v * width + right; i++) {
      const value = data[i]!;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  if (high - low < STEEP) return null;
  let lows = 0;
  let highs = 0;
  for (let v = top; v <= bottom; v++)
    for (let i = v * width + left; i <= v * width + right; i++) {
      if (data[i]! <= low + NEAR) lows++;
      if (data[i]! >= high - NEAR) highs++;
    }
  const isLine = low < NEAR && high >= 128 && highs < THIN;
  const isSlit = high > 255 - NEAR && low < 128 && lows < THIN;
  return { low, high, dark: isLine ? 255 : high, light: isSlit ? 0 : low };
}

/** Coverage at a place between pixels, `right` and `down` from the middle of a pixel by at most half a pixel. */
function between({ width, height, data }: Plane, x: number, y: number, right: number, down: number): number {
  const u = Math.min(width - 1, Math.max(0, x + (right < 0 ? -1 : 1)));
  const v = Math.min(height - 1, Math.max(0, y + (down < 0 ? -1 : 1)));
  const [a, b] = [Math.abs(right), Math.abs(down)];
  const near = data[y * width + x]! * (1 - a) + data[y * width + u]! * a;
  const far = data[v * width + x]! * (1 - a) + data[v * width + u]! * a;
  return near * (1 - b) + far * b;
}
