import type { Plane } from '../../../workers/kernels/plane.ts';
import { randomOf } from '../../unit/support/random.ts';
import { sharedPlane } from '../pictures.ts';

/** How a page is drawn again. */
export interface Warp {
  /** How far lines wander, px. */
  wobble: number;
  scale: number;
  turnDeg: number;
  shift: readonly [number, number];
}

/** How far apart places wander independently, px. */
const REACH = 130;

/** A page drawn again, and for each of its pixels which pixel of the old page it is; -1 for none. */
export function redrawn(line: Plane, { wobble, scale, turnDeg, shift }: Warp, seed: number) {
  const { width, height } = line;
  const across = Math.ceil(width / REACH) + 2;
  const random = randomOf(seed);
  const lattice = () => Float64Array.from({ length: across * across }, () => 2 * random() - 1);
  const [pushX, pushY] = [lattice(), lattice()];
  const turn = (turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const out = sharedPlane(width, height);
  const from = new Int32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [dx, dy] = [x - width / 2 - shift[0], y - height / 2 - shift[1]];
      const u = (cos * dx + sin * dy) / scale + width / 2 + wobble * at(pushX, x, y, across);
      const v = (-sin * dx + cos * dy) / scale + height / 2 + wobble * at(pushY, x, y, across);
      const [column, row] = [Math.round(u), Math.round(v)];
      const inside = column >= 0 && row >= 0 && column < width && row < height;
      from[y * width + x] = inside ? row * width + column : -1;
      out.data[y * width + x] = inside ? line.data[row * width + column]! : 0;
    }
  return { line: out, from };
}

function at(lattice: Float64Array, x: number, y: number, across: number): number {
  const [column, row] = [Math.floor(x / REACH), Math.floor(y / REACH)];
  const smooth = (share: number) => share * share * (3 - 2 * share);
  const [fx, fy] = [smooth(x / REACH - column), smooth(y / REACH - row)];
  const i = row * across + column;
  const upper = lattice[i]! + (lattice[i + 1]! - lattice[i]!) * fx;
  const lower = lattice[i + across]! + (lattice[i + across + 1]! - lattice[i + across]!) * fx;
  return upper + (lower - upper) * fy;
}
