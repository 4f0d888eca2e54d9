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
  const free = new Uint8Array(labels.length);
  for (let i = 0; i < labels.length; i++) free[i] = labels[i] === 0 ? 0 : 255;
  const found = new Uint32Array(labels.length);
  const count = components({ data: free, width, height, from: 0, to: 0, neighbours: 8, labels: found });
  const pairs = new Set<number>();
  const atFrame = new Set<number>();
  const meet = (solid: number, region: number) => {
    if (region !== 0) pairs.add(region * (count + 1) + solid);
  };
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) {
      const solid = found[i]!;
      if (solid === 0) continue;
      if (x > 0) meet(solid, labels[i - 1]!);
      if (y > 0) meet(solid, labels[i - width]!);
      if (x + 1 < width) meet(solid, labels[i + 1]!);
      if (y + 1 < height) meet(solid, labels[i + width]!);
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) atFrame.add(solid);
    }
  return {
    count,
    solid: Uint32Array.from(pairs, (pair) => pair % (count + 1)),
    region: Uint32Array.from(pairs, (pair) => Math.floor(pair / (count + 1))),
    atFrame: Uint32Array.from(atFrame),
  };
}

export const NO_SOLIDS: Solids = {
  count: 0,
  solid: new Uint32Array(0),
  region: new Uint32Array(0),
  atFrame: new Uint32Array(0),
};
