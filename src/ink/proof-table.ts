import type { PrintModel } from './model.ts';

/** Nodes on every axis by number of inks; above five inks a print has no table. */
const SIZES = [0, 256, 65, 33, 17, 9];
/** Root XYZ is stored in whole steps of this, so that a difference in a last bit cannot reach a pixel. */
const STEP = 1 / 65_535;

export interface ProofTable {
  /** How many inks. */
  count: number;
  /** Nodes on every axis; node i stands for the nominal tint i / (size - 1). */
  size: number;
  /** Root XYZ (see `PrintModel.rootXyzOf`) three by three, first ink varying fastest: size^count * 3. */
  data: Float32Array;
}

/**
 * The colours of a print of 1 to 5 inks on a grid of nominal tints, for multilinear interpolation.
 * Throws a RangeError for more inks: ask the model itself for each distinct recipe there.
 */
export function proofTable(model: PrintModel): ProofTable {
  const { count } = model;
  const size = SIZES[count];
  if (!size) throw new RangeError(`a proof table holds 1 to 5 inks, not ${count}; use the model itself`);
  const nodes = size ** count;
  const data = new Float32Array(nodes * 3);
  const tints = new Float64Array(count);
  for (let node = 0; node < nodes; node++) {
    let rest = node;
    for (let ink = 0; ink < count; ink++) {
      tints[ink] = (rest % size) / (size - 1);
      rest = Math.floor(rest / size);
    }
    const root = model.rootXyzOf(tints);
    for (let axis = 0; axis < 3; axis++) data[node * 3 + axis] = Math.round(root[axis]! / STEP) * STEP;
  }
  return { count, size, data };
}
