import { components } from './components.ts';

export interface SolidsArgs {
  /** Regions with what is filled under the line; 0 where none reaches. */
  labels: Uint32Array;
  width: number;
  height: number;
}

/** Areas of line that no region reaches into. */
export interface Solids {
  /** They run 1..count. */
  count: number;
  /** Which solid touches which region, one entry a pair. */
  solid: Uint32Array;
  region: Uint32Array;
  /** Solids that reach the frame. */
  atFrame: Uint32Array;
}

/** Finds the areas of solid line and what lies around them. */
export function solids({ labels, width, height }: SolidsArgs): Solids {
  const free = Uint8Array.from(labels, (label) => (label === 0 ? 0 : 255));
  const found = new Uint32Array(labels.length);
  const count = components({ data: free, width, height, from: 0, to: 0, neighbours: 8, labels: found });
  const pairs = new Set<string>();
  const atFrame = new Set<number>();
  const meet = (i: number, j: number) => {
    if (found[i] !== 0 && labels[j] !== 0) pairs.add(`${found[i]} ${labels[j]}`);
    if (found[j] !== 0 && labels[i] !== 0) pairs.add(`${found[j]} ${labels[i]}`);
  };
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) {
      if (x + 1 < width) meet(i, i + 1);
      if (y + 1 < height) meet(i, i + width);
      const edge = x === 0 || y === 0 || x === width - 1 || y === height - 1;
      if (edge && found[i] !== 0) atFrame.add(found[i]!);
    }
  const list = [...pairs].map((pair) => pair.split(' ').map(Number) as [number, number]);
  return {
    count,
    solid: Uint32Array.from(list, ([solid]) => solid),
    region: Uint32Array.from(list, ([, region]) => region),
    atFrame: Uint32Array.from(atFrame),
  };
}

export const NO_SOLIDS: Solids = {
  count: 0,
  solid: new Uint32Array(0),
  region: new Uint32Array(0),
  atFrame: new Uint32Array(0),
};
