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
  const { width, data } = source;
  const target = out.data;
  const around = extremesOf(source);
  for (let row = from; row < to; row++) {
    const y = Math.floor(row / times);
    const down = (row - y * times + 0.5) / times - 0.5;
    around.turnTo(y);
    let at = row * width * times;
    for (let x = 0; x < width; x++, at += times) {
      const own = data[y * width + x]!;
      const low = around.low[x]!;
      const high = around.high[x]!;
      if (low === high || isBroad(source, x, y)) {
        for (let k = 0; k < times; k++) target[at + k] = own;
        continue;
      }
      const sides = high - low < STEEP ? null : sidesOf(source, x, y, low, high);
      for (let k = 0; k < times; k++) {
        const value = between(source, x, y, (k + 0.5) / times - 0.5, down);
        if (sides === null) target[at + k] = Math.round(value);
        else target[at + k] = value * 2 >= low + high ? sides.dark : sides.light;
      }
    }
  }
}

/** The least and the greatest coverage around every pixel of a row, `AROUND` px each way. */
function extremesOf({ width, height, data }: Plane) {
  const columns = { low: new Uint8Array(width), high: new Uint8Array(width) };
  const low = new Uint8Array(width);
  const high = new Uint8Array(width);
  let known = -1;
  const turnTo = (y: number) => {
    if (y === known) return;
    known = y;
    columns.low.fill(255);
    columns.high.fill(0);
    for (let v = Math.max(0, y - AROUND); v <= Math.min(height - 1, y + AROUND); v++)
      for (let x = 0, i = v * width; x < width; x++, i++) {
        const value = data[i]!;
        if (value < columns.low[x]!) columns.low[x] = value;
        if (value > columns.high[x]!) columns.high[x] = value;
      }
    for (let x = 0; x < width; x++) {
      let least = 255;
      let most = 0;
      for (let u = Math.max(0, x - AROUND); u <= Math.min(width - 1, x + AROUND); u++) {
        if (columns.low[u]! < least) least = columns.low[u]!;
        if (columns.high[u]! > most) most = columns.high[u]!;
      }
      low[x] = least;
      high[x] = most;
    }
  };
  return { low, high, turnTo };
}

/** Whether a pixel has its like beside it and above or below it: a tint or a solid, not the soft edge of one. */
function isBroad({ width, height, data }: Plane, x: number, y: number): boolean {
  const i = y * width + x;
  const own = data[i];
  return (
    ((x > 0 && data[i - 1] === own) || (x + 1 < width && data[i + 1] === own)) &&
    ((y > 0 && data[i - width] === own) || (y + 1 < height && data[i + width] === own))
  );
}

/** What either side of an edge is to print as. */
function sidesOf(
  { width, height, data }: Plane,
  x: number,
  y: number,
  low: number,
  high: number,
): { light: number; dark: number } {
  let lows = 0;
  let highs = 0;
  for (let v = Math.max(0, y - AROUND); v <= Math.min(height - 1, y + AROUND); v++)
    for (let u = Math.max(0, x - AROUND); u <= Math.min(width - 1, x + AROUND); u++) {
      const value = data[v * width + u]!;
      if (value <= low + NEAR) lows++;
      if (value >= high - NEAR) highs++;
    }
  const isLine = low < NEAR && high >= 128 && highs < THIN;
  const isSlit = high > 255 - NEAR && low < 128 && lows < THIN;
  return { dark: isLine ? 255 : high, light: isSlit ? 0 : low };
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
