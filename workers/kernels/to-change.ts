import { wordsOf } from './byte-runs.ts';

/** "No change within reach" in a plane of distances to a change. */
export const NO_CHANGE = 255;

export interface ToChangeArgs {
  data: Uint8Array;
  width: number;
  height: number;
  /** Coverage from which a pixel counts as ink. */
  least: number;
  /** Distances above this are NO_CHANGE; at most 254. */
  limit: number;
  /** Receives the distance in px to the nearest ink of the same column for bare pixels, to the nearest bare for ink. */
  out: Uint8Array;
}

/** How far along each of the columns `from..to` ink ends or begins; the edge of the picture is no change. */
export function toChange(args: ToChangeArgs, from: number, to: number): void {
  const { height } = args;
  for (let y = 0; y < height; y++) carry(args, y, y - 1, true, from, to);
  for (let y = height - 2; y >= 0; y--) carry(args, y, y + 1, false, from, to);
}

/** Takes distances over from the row next to it; `fresh` where the row has none yet. */
function carry(
  { data, width, height, least, limit, out }: ToChangeArgs,
  y: number,
  next: number,
  fresh: boolean,
  from: number,
  to: number,
): void {
  const end = y * width + to;
  if (next < 0 || next >= height) {
    out.fill(NO_CHANGE, y * width + from, end);
    return;
  }
  const step = (next - y) * width;
  const words = width % 4 === 0 ? wordsOf(data) : null;
  const far = wordsOf(out);
  for (let i = y * width + from; i < end; ) {
    const whole = words !== null && far !== null && (i & 3) === 0 && i + 4 <= end;
    if (whole && words[i >> 2] === words[(i + step) >> 2] && far[(i + step) >> 2] === 0xffffffff) {
      if (fresh) far[i >> 2] = 0xffffffff;
      i += 4;
      continue;
    }
    const stop = Math.min(end, i + 4 - (i & 3));
    for (; i < stop; i++) {
      const alike = data[i]! >= least === data[i + step]! >= least;
      const there = out[i + step]!;
      const found = !alike ? 1 : there >= limit ? NO_CHANGE : there + 1;
      out[i] = fresh ? found : Math.min(out[i]!, found);
    }
  }
}
