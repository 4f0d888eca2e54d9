import { BadInput } from '../../src/graph/complaint.ts';
import type { Plane } from './plane.ts';

export interface EvenScanArgs {
  /** Interleaved 8-bit pixels: grey, grey + alpha, RGB or RGBA. */
  pixels: Uint8Array;
  width: number;
  height: number;
  bands: number;
  /** Light is evened over this many px each way. */
  reach: number;
  /** Byte steps around 128 that a change of light by all of it makes. */
  swing: number;
  name: string;
}

/** Sides of a tile are whole multiples of this, so that it can be reduced without a seam. */
const GRID = 16;
const LEAST_PX = 128;
/** A scan of bare paper is lighter than this part of white. */
const DARKEST = 0.15;

/**
 * A tile of paper from a scan: its slow changes of light divided out, its opposite sides faded into one another, as
 * bytes around 128.
 *
 * @throws BadInput when the scan is too small or too dark to be bare paper
 */
export function evenScan(args: EvenScanArgs): Plane {
  const { width, height, name } = args;
  if (width < LEAST_PX || height < LEAST_PX)
    throw new BadInput(
      `${name}: only ${width} x ${height} px; a scan of paper needs ${LEAST_PX} px each way`,
    );
  const light = lightOf(args);
  if (light.reduce((sum, value) => sum + value, 0) / light.length < DARKEST)
    throw new BadInput(`${name}: too dark for bare paper; scan the empty sheet`);
  const around = boxMean(boxMean(light, width, height, args.reach), width, height, args.reach);
  const change = light.map((value, i) => value / around[i]! - 1);
  return seamless(change, width, height, args.swing);
}

/** The eye's weights of red, green and blue; light goes about as the square of a screen byte. */
function lightOf({ pixels, width, height, bands }: EvenScanArgs): Float32Array {
  return Float32Array.from({ length: width * height }, (_, i) => {
    const at = i * bands;
    const grey =
      bands < 3 ? pixels[at]! : (54 * pixels[at]! + 183 * pixels[at + 1]! + 19 * pixels[at + 2]!) / 256;
    return Math.max(1, grey * grey) / 65_025;
  });
}

function boxMean(from: Float32Array, width: number, height: number, reach: number): Float32Array {
  const between = new Float32Array(from.length);
  const out = new Float32Array(from.length);
  for (let y = 0; y < height; y++) meanLine(from, between, y * width, 1, width, reach);
  for (let x = 0; x < width; x++) meanLine(between, out, x, width, height, reach);
  return out;
}

function meanLine(
  from: Float32Array,
  out: Float32Array,
  start: number,
  step: number,
  length: number,
  reach: number,
): void {
  let sum = 0;
  let count = 0;
  for (let k = 0; k < Math.min(reach, length); k++, count++) sum += from[start + k * step]!;
  for (let k = 0; k < length; k++) {
    if (k + reach < length) {
      sum += from[start + (k + reach) * step]!;
      count++;
    }
    out[start + k * step] = sum / count;
    if (k - reach >= 0) {
      sum -= from[start + (k - reach) * step]!;
      count--;
    }
  }
}

/** Fades an eighth of each side into the other; what is faded keeps its spread. */
function seamless(change: Float32Array, width: number, height: number, swing: number): Plane {
  const across = fading(width);
  const down = fading(height);
  const data = new Uint8Array(new SharedArrayBuffer(across.length * down.length));
  const at = (x: number, y: number) => change[y * width + x]!;
  for (let y = 0; y < down.length; y++)
    for (let x = 0; x < across.length; x++) {
      const [p, q] = [across.share(x), down.share(y)];
      const near = p * at(x, y) + (1 - p) * at(across.twin(x), y);
      const far = q === 1 ? 0 : p * at(x, down.twin(y)) + (1 - p) * at(across.twin(x), down.twin(y));
      const spread = Math.sqrt((p * p + (1 - p) * (1 - p)) * (q * q + (1 - q) * (1 - q)));
      const value = 128.5 + (swing * (q * near + (1 - q) * far)) / spread;
      data[y * across.length + x] = Math.min(255, Math.max(0, value));
    }
  return { width: across.length, height: down.length, data };
}

function fading(size: number) {
  const length = Math.floor((size * 7) / 8 / GRID) * GRID;
  const margin = size - length;
  return {
    length,
    share: (k: number) => Math.min(1, (k + 0.5) / margin),
    twin: (k: number) => Math.min(size - 1, k + length),
  };
}
