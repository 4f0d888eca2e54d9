export interface ChooseByArgs {
  width: number;
  /** 0 takes from `outside`, anything else from `inside`. */
  mask: Uint8Array;
  inside: Uint8Array;
  outside: Uint8Array;
  /** Gives out 255 less. */
  invert: boolean;
  out: Uint8Array;
}

/** Takes each pixel from one of two planes by a mask, for rows `from..to`. */
export function chooseBy(args: ChooseByArgs, from: number, to: number): void {
  const { width, mask, inside, outside, invert, out } = args;
  for (let i = from * width; i < to * width; i++) {
    const value = mask[i] === 0 ? outside[i]! : inside[i]!;
    out[i] = invert ? 255 - value : value;
  }
}
