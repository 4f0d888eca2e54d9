import { type PaintArgs, paintProof, type RootXyzOf } from './paint-proof.ts';

export interface ProofArgs extends PaintArgs {
  /** Nodes along each axis of the table. */
  size: number;
  /** Square roots of X, Y, Z (D50, white Y = 1) at `size ** plates` nodes, the first plate varying fastest. */
  table: Float32Array;
}

/** Colours of up to five plates printed over one another, for rows `from..to`, by multilinear look-up. */
export function proof(args: ProofArgs, from: number, to: number): void {
  const { table, size, plates } = args;
  const look =
    plates.length <= 3 ? lookUpToThree(table, size, plates.length) : lookMany(table, size, plates.length);
  paintProof(args, look, from, to);
}

/** For each coverage the lower node of its cell and how far it lies towards the upper one. */
function cellsOf(size: number): { low: Int32Array; part: Float64Array } {
  const low = Int32Array.from({ length: 256 }, (_, v) =>
    Math.min(size - 2, Math.floor((v * (size - 1)) / 255)),
  );
  const part = Float64Array.from({ length: 256 }, (_, v) => (v * (size - 1)) / 255 - low[v]!);
  return { low, part };
}

/** The usual case written out, four times as fast; axes that are missing have no length. */
function lookUpToThree(table: Float32Array, size: number, count: number): RootXyzOf {
  const { low, part } = cellsOf(size);
  const second = count > 1 ? 3 * size : 0;
  const third = count > 2 ? 3 * size * size : 0;
  return (coverage, root) => {
    const u = coverage[0]!;
    const v = count > 1 ? coverage[1]! : 0;
    const w = count > 2 ? coverage[2]! : 0;
    const up = part[u]!;
    const down = 1 - up;
    const both = part[v]! * part[w]!;
    const onlyV = part[v]! - both;
    const onlyW = part[w]! - both;
    const none = 1 - part[v]! - onlyW;
    const a = low[u]! * 3 + low[v]! * second + low[w]! * third;
    const b = a + second;
    const c = a + third;
    const d = b + third;
    root[0] =
      (table[a]! * down + table[a + 3]! * up) * none +
      (table[b]! * down + table[b + 3]! * up) * onlyV +
      (table[c]! * down + table[c + 3]! * up) * onlyW +
      (table[d]! * down + table[d + 3]! * up) * both;
    root[1] =
      (table[a + 1]! * down + table[a + 4]! * up) * none +
      (table[b + 1]! * down + table[b + 4]! * up) * onlyV +
      (table[c + 1]! * down + table[c + 4]! * up) * onlyW +
      (table[d + 1]! * down + table[d + 4]! * up) * both;
    root[2] =
      (table[a + 2]! * down + table[a + 5]! * up) * none +
      (table[b + 2]! * down + table[b + 5]! * up) * onlyV +
      (table[c + 2]! * down + table[c + 5]! * up) * onlyW +
      (table[d + 2]! * down + table[d + 5]! * up) * both;
  };
}

function lookMany(table: Float32Array, size: number, count: number): RootXyzOf {
  const corners = 1 << count;
  const stride = Array.from({ length: count }, (_, k) => 3 * size ** k);
  const away = Int32Array.from({ length: corners }, (_, corner) =>
    stride.reduce((sum, step, k) => sum + ((corner >> k) & 1) * step, 0),
  );
  const { low, part } = cellsOf(size);
  const weight = new Float64Array(corners);
  return (coverage, root) => {
    let base = 0;
    weight[0] = 1;
    for (let k = 0; k < count; k++) {
      const value = coverage[k]!;
      const up = part[value]!;
      base += low[value]! * stride[k]!;
      for (let corner = 0; corner < 1 << k; corner++) {
        const both = weight[corner]!;
        weight[corner | (1 << k)] = both * up;
        weight[corner] = both * (1 - up);
      }
    }
    let x = 0;
    let y = 0;
    let z = 0;
    for (let corner = 0; corner < corners; corner++) {
      const share = weight[corner]!;
      const at = base + away[corner]!;
      x += share * table[at]!;
      y += share * table[at + 1]!;
      z += share * table[at + 2]!;
    }
    root[0] = x;
    root[1] = y;
    root[2] = z;
  };
}
