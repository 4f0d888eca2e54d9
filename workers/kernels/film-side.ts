import type { Plane } from './plane.ts';

export interface FilmSideArgs {
  plane: Plane;
  /** Grey as files have it: 0 black .. 255 clear. */
  grey: Plane;
  mirrored: boolean;
  negative: boolean;
  /** Two values only, black from the middle up. */
  oneBit: boolean;
}

/** A plate as film, rows `from..to`: turned over, inverted or cut to two values as asked. */
export function filmSide(args: FilmSideArgs, from: number, to: number): void {
  const { width, data } = args.plane;
  const { data: grey } = args.grey;
  const table = Uint8Array.from({ length: 256 }, (_, v) => {
    const ink = args.oneBit ? (v >= 128 ? 255 : 0) : v;
    return args.negative ? ink : 255 - ink;
  });
  const { mirrored } = args;
  for (let y = from; y < to; y++) {
    const row = y * width;
    for (let x = 0; x < width; x++) grey[row + x] = table[data[row + (mirrored ? width - 1 - x : x)]!]!;
  }
}
