import { type Fit, roughPlace, type Size } from './rough-place.ts';
import type { RoughPicture } from './shrink-rough.ts';

/** A drawing's regions and its rough, small, to try fits on. */
export interface FitLevel extends Size {
  /** Region of each pixel, from 1 without a gap; 0 at edges of regions and where they are too small to tell. */
  regions: Int32Array;
  /** How many regions, and how many pixels are of one. */
  count: number;
  inner: number;
  /** Red, green and blue on white, 3 bytes a pixel; about two pixels to one of the drawing, each way. */
  rough: Size & { rgb: Uint8Array };
  stretched: boolean;
}

/** Pixels of the rough to one of the drawing. */
const FINER = 2;
/** Smaller regions say nothing: any rough has one colour there. */
const LEAST_INNER = 4;

/** A drawing of some labels at about `side` px along its longer side, with its rough. */
export function fitLevel(
  labels: { width: number; height: number; data: Uint32Array },
  rough: RoughPicture,
  stretched: boolean,
  side: number,
): FitLevel {
  const step = Math.max(1, Math.max(labels.width, labels.height) / side);
  const width = Math.max(1, Math.floor(labels.width / step));
  const height = Math.max(1, Math.floor(labels.height / step));
  const small = new Uint32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const row = Math.floor((y + 0.5) * step) * labels.width;
      small[y * width + x] = labels.data[row + Math.floor((x + 0.5) * step)]!;
    }
  const { regions, count, inner } = innerRegions(small, width, height);
  const scale = Math.max(1, Math.round(Math.max(rough.width, rough.height) / (FINER * side)));
  return { width, height, regions, count, inner, rough: smaller(rough, scale), stretched };
}

function innerRegions(labels: Uint32Array, width: number, height: number) {
  const inside = new Uint32Array(labels.length);
  const pixels = new Map<number, number>();
  for (let y = 1; y < height - 1; y++)
    for (let x = 1, i = y * width + 1; x < width - 1; x++, i++) {
      const label = labels[i]!;
      const same =
        labels[i - 1] === label &&
        labels[i + 1] === label &&
        labels[i - width] === label &&
        labels[i + width] === label;
      if (label === 0 || !same) continue;
      inside[i] = label;
      pixels.set(label, (pixels.get(label) ?? 0) + 1);
    }
  const names = new Map<number, number>();
  for (const [label, many] of pixels) if (many >= LEAST_INNER) names.set(label, names.size + 1);
  const regions = Int32Array.from(inside, (label) => names.get(label) ?? 0);
  const inner = regions.reduce((sum, region) => sum + (region === 0 ? 0 : 1), 0);
  return { regions, count: names.size, inner };
}

/** Means of boxes. */
function smaller({ width, height, rgba }: RoughPicture, scale: number): FitLevel['rough'] {
  const toWidth = Math.ceil(width / scale);
  const toHeight = Math.ceil(height / scale);
  const rgb = new Uint8Array(toWidth * toHeight * 3);
  for (let row = 0; row < toHeight; row++)
    for (let column = 0; column < toWidth; column++) {
      const bottom = Math.min(height, (row + 1) * scale);
      const right = Math.min(width, (column + 1) * scale);
      const pixels = (bottom - row * scale) * (right - column * scale);
      for (let band = 0; band < 3; band++) {
        let sum = 0;
        for (let y = row * scale; y < bottom; y++)
          for (let x = column * scale; x < right; x++) sum += rgba[(y * width + x) * 4 + band]!;
        rgb[(row * toWidth + column) * 3 + band] = Math.round(sum / pixels);
      }
    }
  return { width: toWidth, height: toHeight, rgb };
}

/** How the rough's colours lie in the regions when it is laid on so; what it does not cover is left out. */
export interface Spread {
  /** Part of the pixels of regions that it covers. */
  covered: number;
  /** Variance of colour: of all, and what is left of it within regions; freedom taken into account. */
  all: number;
  within: number;
}

/** A function of a fit, with its working memory. */
export function spreadOn(level: FitLevel): (fit: Fit) => Spread {
  const { width, height, regions, count, inner, rough, stretched } = level;
  const sums = new Float64Array((count + 1) * 3);
  const many = new Uint32Array(count + 1);
  return (fit) => {
    const { xx, xy, x0, yx, yy, y0 } = roughPlace(level, rough, fit, stretched);
    sums.fill(0);
    many.fill(0);
    let squares = 0;
    for (let y = 0, i = 0; y < height; y++)
      for (let x = 0; x < width; x++, i++) {
        const region = regions[i]!;
        if (region === 0) continue;
        const column = Math.floor(xx * x + xy * y + x0);
        const row = Math.floor(yx * x + yy * y + y0);
        if (column < 0 || row < 0 || column >= rough.width || row >= rough.height) continue;
        const at = (row * rough.width + column) * 3;
        const [r, g, b] = [rough.rgb[at]!, rough.rgb[at + 1]!, rough.rgb[at + 2]!];
        sums[region * 3]! += r;
        sums[region * 3 + 1]! += g;
        sums[region * 3 + 2]! += b;
        squares += r * r + g * g + b * b;
        many[region]!++;
      }
    return spreadOf(squares, sums, many, inner);
  };
}

function spreadOf(squares: number, sums: Float64Array, many: Uint32Array, inner: number): Spread {
  const whole = [0, 0, 0];
  let [total, groups, between] = [0, 0, 0];
  for (let region = 1; region < many.length; region++) {
    if (many[region] === 0) continue;
    total += many[region]!;
    groups++;
    for (let band = 0; band < 3; band++) {
      const sum = sums[region * 3 + band]!;
      whole[band]! += sum;
      between += (sum * sum) / many[region]!;
    }
  }
  if (total <= groups || groups < 2) return { covered: 0, all: 0, within: 0 };
  const mean = whole.reduce((sum, value) => sum + (value * value) / total, 0);
  return {
    covered: total / inner,
    all: (squares - mean) / (total - 1),
    within: (squares - between) / (total - groups),
  };
}
