export interface SetEdgesArgs {
  /** From `plateSets`. */
  sets: Uint16Array;
  width: number;
  height: number;
  /** Receives 1 where a pixel prints in other plates than one of the four around it, else 0. */
  out: Uint8Array;
}

/** Where the plates that print change, for rows `from..to`. */
export function setEdges({ sets, width, height, out }: SetEdgesArgs, from: number, to: number): void {
  for (let y = from; y < to; y++) {
    const row = y * width;
    const up = y > 0 ? width : 0;
    const down = y + 1 < height ? width : 0;
    let left = sets[row]!;
    for (let i = row; i < row + width; i++) {
      const own = sets[i]!;
      const right = i + 1 < row + width ? sets[i + 1]! : own;
      out[i] = own === left && own === right && own === sets[i - up] && own === sets[i + down] ? 0 : 1;
      left = own;
    }
  }
}
