import { type PaintArgs, paintProof, type RootXyzOf } from './paint-proof.ts';

export interface ProofArgs extends PaintArgs {
  /** Nodes along each axis of the table. */
  size: number;
  /** Square roots of X, Y, Z (D50, white Y = 1) at `size ** plates` nodes, the first plate varying fastest. */
  table: Float32Array;
}

/** Colours of up to five plates printed over one another, for rows `from..to`, by multilinear look-up. */
export function proof(args: ProofArgs, from: number, to: number): void {
  paintProof(args, lookup(args.table, args.size, args.plates.length), from, to);
}

function lookup(table: Float32Array, size: number, count: number): RootXyzOf {
  const stride = Array.from({ length: count }, (_, k) => 3 * size ** k);
  const part = new Float64Array(count);
  const corners = 1 << count;
  return (coverage, root) => {
    let base = 0;
    for (let k = 0; k < count; k++) {
      const place = (coverage[k]! * (size - 1)) / 255;
      const low = Math.min(size - 2, Math.floor(place));
      part[k] = place - low;
      base += low * stride[k]!;
    }
    root.fill(0);
    for (let corner = 0; corner < corners; corner++) {
      let weight = 1;
      let at = base;
      for (let k = 0; k < count; k++) {
        if ((corner >> k) & 1) {
          weight *= part[k]!;
          at += stride[k]!;
        } else weight *= 1 - part[k]!;
      }
      if (weight === 0) continue;
      root[0]! += weight * table[at]!;
      root[1]! += weight * table[at + 1]!;
      root[2]! += weight * table[at + 2]!;
    }
  };
}
