import type { Plane } from '../plane.ts';

export interface ScreenFmArgs {
  /** From `enlarge`. */
  plate: Plane;
  out: Plane;
  /** Share of ink of every coverage, 0 none .. 65535 solid. */
  tone: Uint16Array;
  /** From `blueNoise`: thresholds of `side` x `side` dots, laid side by side. */
  tile: Uint16Array;
  side: number;
  /** Side of a dot, device px. */
  dot: number;
  /** Where the tile begins, dots. */
  shift: readonly [number, number];
}

/** An FM screen of dots that keep apart, for rows `from..to`. */
export function screenFm(args: ScreenFmArgs, from: number, to: number): void {
  const { plate, tone, tile, side, dot } = args;
  const { width, data } = plate;
  const target = args.out.data;
  const column = Uint32Array.from({ length: width }, (_, x) => (Math.floor(x / dot) + args.shift[0]) % side);
  for (let y = from; y < to; y++) {
    const row = ((Math.floor(y / dot) + args.shift[1]) % side) * side;
    for (let x = 0, i = y * width; x < width; x++, i++)
      target[i] = tone[data[i]!]! > tile[row + column[x]!]! ? 255 : 0;
  }
}
