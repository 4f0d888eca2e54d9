import { printModel } from '../../src/ink/model.ts';
import type { PrintInput } from '../../src/ink/model-input.ts';
import { type PaintArgs, paintProof, type RootXyzOf } from './paint-proof.ts';

export interface ProofManyArgs extends PaintArgs {
  /** Inks in print order on their paper. */
  print: PrintInput;
}

/** Nodes along each axis of the grid that colours are interpolated in. */
const SIZE = 9;

/**
 * Colours of more than five plates, for rows `from..to`. A table over so many inks would not fit, so the nodes of
 * its grid are worked out when a pixel first needs them.
 */
export function proofMany(args: ProofManyArgs, from: number, to: number): void {
  paintProof(args, lazyLookup(args.print), from, to);
}

function lazyLookup(print: PrintInput): RootXyzOf {
  const model = printModel(print);
  const { count } = model;
  const nodes = new Map<number, readonly number[]>();
  const tints = new Float64Array(count);
  const nodeAt = (steps: Int32Array): readonly number[] => {
    let key = 0;
    for (let k = count - 1; k >= 0; k--) key = key * SIZE + steps[k]!;
    const known = nodes.get(key);
    if (known) return known;
    for (let k = 0; k < count; k++) tints[k] = steps[k]! / (SIZE - 1);
    const root = model.rootXyzOf(tints);
    nodes.set(key, root);
    return root;
  };
  const low = new Int32Array(count);
  const steps = new Int32Array(count);
  const partial: number[] = [];
  return (coverage, root) => {
    partial.length = 0;
    const part: number[] = [];
    for (let k = 0; k < count; k++) {
      const place = (coverage[k]! * (SIZE - 1)) / 255;
      low[k] = Math.floor(place);
      if (place === low[k]) continue;
      partial.push(k);
      part.push(place - low[k]!);
    }
    root.fill(0);
    for (let corner = 0; corner < 1 << partial.length; corner++) {
      let weight = 1;
      steps.set(low);
      for (let p = 0; p < partial.length; p++) {
        const up = (corner >> p) & 1;
        weight *= up ? part[p]! : 1 - part[p]!;
        steps[partial[p]!]! += up;
      }
      const node = nodeAt(steps);
      for (let c = 0; c < 3; c++) root[c]! += weight * node[c]!;
    }
  };
}
