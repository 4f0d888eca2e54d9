import type { Plane } from '../../../workers/kernels/plane.ts';
import { randomOf } from '../../unit/support/random.ts';
import { sharedPlane } from '../pictures.ts';
import type { Truth } from './truth.ts';

/** Waves that push the line about, px: as an unsteady hand does, and as a dry tool on rough paper does. */
const WOBBLE = { length: 40, height: 3 };
const RAGGED = { length: 8, height: 1.5 };
/** Where the tool left paper bare within the line: size of the bare spots in px, and their level in the noise. */
const BARE = { length: 6, above: 0.93 };

/** A drawing as a rough hand would give it, with its true areas moved along; both hang on the seed alone. */
export function roughened(line: Plane, truth: Truth, seed: number): { line: Plane; truth: Truth } {
  const { width, height } = line;
  const [wobbleX, wobbleY, raggedX, raggedY, bare] = [WOBBLE, WOBBLE, RAGGED, RAGGED, BARE].map(
    ({ length }, k) => noiseOf(width, height, length, seed + 7 * k),
  ) as [Noise, Noise, Noise, Noise, Noise];
  const out = sharedPlane(width, height);
  const labels = new Uint32Array(width * height);
  for (let y = 0; y < height; y++) {
    const [wx, wy, rx, ry, spots] = [wobbleX(y), wobbleY(y), raggedX(y), raggedY(y), bare(y)];
    for (let x = 0; x < width; x++) {
      const u = x + WOBBLE.height * (2 * wx[x]! - 1) + RAGGED.height * (2 * rx[x]! - 1);
      const v = y + WOBBLE.height * (2 * wy[x]! - 1) + RAGGED.height * (2 * ry[x]! - 1);
      const from = clamped(Math.round(v), height) * width + clamped(Math.round(u), width);
      out.data[y * width + x] = spots[x]! > BARE.above ? 0 : line.data[from]!;
      labels[y * width + x] = truth.labels[from]!;
    }
  }
  return { line: out, truth: { ...truth, labels } };
}

function clamped(at: number, extent: number): number {
  return Math.min(extent - 1, Math.max(0, at));
}

/** Values 0..1 of one row, to be read before the next row is asked for. */
type Noise = (y: number) => Float64Array;

/** Smooth noise: random values on a lattice, with straight lines between them. */
function noiseOf(width: number, height: number, length: number, seed: number): Noise {
  const across = Math.ceil(width / length) + 2;
  const random = randomOf(seed);
  const lattice = Float64Array.from({ length: across * (Math.ceil(height / length) + 2) }, random);
  const row = new Float64Array(width);
  return (y) => {
    const top = Math.floor(y / length);
    const down = y / length - top;
    for (let x = 0; x < width; x++) {
      const left = Math.floor(x / length);
      const right = x / length - left;
      const at = top * across + left;
      const upper = lattice[at]! + (lattice[at + 1]! - lattice[at]!) * right;
      const lower = lattice[at + across]! + (lattice[at + across + 1]! - lattice[at + across]!) * right;
      row[x] = upper + (lower - upper) * down;
    }
    return row;
  };
}
