import type { Affine } from './offset.ts';
import type { RoughPicture } from './shrink-rough.ts';

export interface RoughColoursArgs {
  /** Labels 1..count, 0 none. */
  labels: Uint32Array;
  width: number;
  height: number;
  count: number;
  rough: RoughPicture;
  /** Where a pixel of the drawing lies on the rough. */
  place: Affine;
  /** How far from a region's edge its colour is taken, where it is wide enough, px. */
  inward: number;
}

/** Regions are looked at on every `stride`th pixel both ways, so that about so many are seen in all. */
const SEEN = 2_000_000;
/** Fewer pixels than this deep inside: those nearer the edge count too. */
const ENOUGH = 12;
/** Part of a region that must be painted in the rough. */
const PAINTED = 0.2;
const OPAQUE = 128;
/** Colours are counted in cubes of this side to find the one that most of a region has. */
const CUBE = 16;
const SIDE = 256 / CUBE;
/** A region with no colour that this part of it has is taken as a texture: its middle colour counts. */
const LEAST_MODE = 0.25;

/** How deep a pixel lies: 0 at the edge of its region, 1 half as deep as asked, 2 as deep. */
type Depth = 0 | 1 | 2;

/**
 * The colour of each region in a rough: away from its edge where it is wide enough; the colour that most of it has,
 * so that sketch lines and shading do not tint it, and of that the middle value of each channel.
 *
 * @returns by label: red, green, blue as 0xrrggbb; -1 where less than a fifth of the region is painted; index 0 unused
 */
export function roughColours(args: RoughColoursArgs): Int32Array {
  const { width, height, count } = args;
  const stride = Math.max(1, Math.floor(Math.sqrt((width * height) / SEEN)));
  const colours = coloursAt(args, stride, null);
  if (stride === 1) return colours.found;
  const few = new Uint8Array(count + 1);
  let some = false;
  for (let label = 1; label <= count; label++)
    if (colours.seen[label]! < ENOUGH) {
      few[label] = 1;
      some = true;
    }
  if (!some) return colours.found;
  const again = coloursAt(args, 1, few);
  return colours.found.map((colour, label) => (few[label] ? again.found[label]! : colour));
}

/** Colours from every `stride`th pixel; of the labels marked in `only`, or of all. */
function coloursAt(args: RoughColoursArgs, stride: number, only: Uint8Array | null) {
  const { labels, width, height, count, rough, place, inward } = args;
  const half = Math.max(1, Math.round(inward / 2));
  const full = Math.max(2, Math.round(inward));
  const bins = new Uint32Array((count + 1) * 3);
  const walk = (take: (label: number, depth: Depth, x: number, y: number) => void) => {
    for (let y = stride >> 1; y < height; y += stride)
      for (let x = stride >> 1; x < width; x += stride) {
        const label = labels[y * width + x]!;
        if (label === 0 || (only && only[label] === 0)) continue;
        take(label, depthOf(label, x, y), x, y);
      }
  };
  const same = (label: number, x: number, y: number) =>
    x >= 0 && y >= 0 && x < width && y < height && labels[y * width + x] === label;
  const clear = (label: number, x: number, y: number, by: number) =>
    same(label, x - by, y) && same(label, x + by, y) && same(label, x, y - by) && same(label, x, y + by);
  function depthOf(label: number, x: number, y: number): Depth {
    if (!clear(label, x, y, half)) return 0;
    return clear(label, x, y, full) ? 2 : 1;
  }
  walk((label, depth) => {
    bins[label * 3 + depth]!++;
  });
  const least = new Uint8Array(count + 1);
  const start = new Uint32Array(count + 2);
  for (let label = 1; label <= count; label++) {
    const [edge, mid, deep] = [bins[label * 3]!, bins[label * 3 + 1]!, bins[label * 3 + 2]!];
    least[label] = deep >= ENOUGH ? 2 : deep + mid >= ENOUGH ? 1 : 0;
    const many = deep + (least[label]! < 2 ? mid : 0) + (least[label]! < 1 ? edge : 0);
    start[label + 1] = start[label]! + many;
  }
  const next = start.slice();
  const samples = new Int32Array(start[count + 1]!);
  walk((label, depth, x, y) => {
    if (depth < least[label]!) return;
    samples[next[label]!++] = sampleAt(rough, place, x, y);
  });
  const found = new Int32Array(count + 1).fill(-1);
  const seen = new Uint32Array(count + 1);
  for (let label = 1; label <= count; label++) {
    const own = samples.subarray(start[label]!, start[label + 1]!);
    seen[label] = own.length;
    found[label] = dominant(own);
  }
  return { found, seen };
}

/** The rough's colour under a pixel; -1 where it shows nothing. */
function sampleAt(rough: RoughPicture, { xx, xy, x0, yx, yy, y0 }: Affine, x: number, y: number): number {
  const column = Math.floor(xx * x + xy * y + x0);
  const row = Math.floor(yx * x + yy * y + y0);
  if (column < 0 || row < 0 || column >= rough.width || row >= rough.height) return -1;
  const at = (row * rough.width + column) * 4;
  if (rough.rgba[at + 3]! < OPAQUE) return -1;
  return (rough.rgba[at]! << 16) | (rough.rgba[at + 1]! << 8) | rough.rgba[at + 2]!;
}

/** The colour that most samples have, about; -1 where too few show any. */
function dominant(samples: Int32Array): number {
  const painted = samples.filter((colour) => colour >= 0);
  if (painted.length === 0 || painted.length < PAINTED * samples.length) return -1;
  const cubes = new Map<number, number>();
  for (const colour of painted) {
    const cube = cubeOf(colour);
    cubes.set(cube, (cubes.get(cube) ?? 0) + 1);
  }
  let best = -1;
  let most = 0;
  for (const cube of [...cubes.keys()].sort((a, b) => a - b)) {
    const many = around(cube).reduce((sum, other) => sum + (cubes.get(other) ?? 0), 0);
    if (many > most) {
      most = many;
      best = cube;
    }
  }
  if (most < LEAST_MODE * painted.length) return middle(painted);
  const near = new Set(around(best));
  return middle(painted.filter((colour) => near.has(cubeOf(colour))));
}

function cubeOf(colour: number): number {
  const red = (colour >> 16) / CUBE;
  const green = ((colour >> 8) & 255) / CUBE;
  const blue = (colour & 255) / CUBE;
  return (Math.floor(red) * SIDE + Math.floor(green)) * SIDE + Math.floor(blue);
}

/** A cube and the 26 about it. */
function around(cube: number): number[] {
  const red = Math.floor(cube / (SIDE * SIDE));
  const green = Math.floor(cube / SIDE) % SIDE;
  const blue = cube % SIDE;
  const inside = (value: number) => value >= 0 && value < SIDE;
  const found: number[] = [];
  for (const r of [red - 1, red, red + 1])
    for (const g of [green - 1, green, green + 1])
      for (const b of [blue - 1, blue, blue + 1])
        if (inside(r) && inside(g) && inside(b)) found.push((r * SIDE + g) * SIDE + b);
  return found;
}

/** The lower middle value of each channel. */
function middle(colours: Int32Array): number {
  const at = (colours.length - 1) >> 1;
  const channel = (shift: number) => colours.map((colour) => (colour >> shift) & 255).sort()[at]!;
  return (channel(16) << 16) | (channel(8) << 8) | channel(0);
}
