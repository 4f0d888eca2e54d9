import { NumberList } from './number-list.ts';

/**
 * What a pixel that has no basin yet holds, as a negative number: the index of the pixel it points to, and its layer
 * in a plateau. Layer 0 points uphill; layers 1, 2, 3, 1, .. count the steps across level ground.
 */
const LAYER_SHIFT = 29;
const INDEX = (1 << LAYER_SHIFT) - 1;

export const pointerTo = (target: number, layer = 0) => ~(target | (layer << LAYER_SHIFT));
const targetOf = (pointer: number) => ~pointer & INDEX;
const layerOf = (pointer: number) => ~pointer >>> LAYER_SHIFT;

interface Ground {
  distance2: Uint16Array | Uint32Array;
  width: number;
  height: number;
}

/** Writes the 4-neighbours of pixel `i` that lie as high to `into`, N, W, E, S; returns how many there are. */
function levelNeighbours({ distance2, width, height }: Ground, i: number, into: Uint32Array): number {
  const d2 = distance2[i]!;
  const x = i % width;
  let count = 0;
  if (i >= width && distance2[i - width] === d2) into[count++] = i - width;
  if (x > 0 && distance2[i - 1] === d2) into[count++] = i - 1;
  if (x + 1 < width && distance2[i + 1] === d2) into[count++] = i + 1;
  if (i < width * (height - 1) && distance2[i + width] === d2) into[count++] = i + width;
  return count;
}

/**
 * Lets level pixels point, breadth first, to their neighbours that lead uphill.
 *
 * @param at pointers; 0 for each pixel of `flat`, and still so for those that no way leads to
 * @param flat pixels without a higher neighbour, in raster order
 * @returns pixels with more than one equally short way, each with the start of another: a list of pairs
 */
export function crossPlateaus(ground: Ground, at: Int32Array, flat: Uint32Array): Uint32Array {
  const contested = new NumberList();
  const level = new Uint32Array(4);
  let frontier = new NumberList();
  const reach = (i: number, way: number, layer: number, reached: NumberList) => {
    if (at[i] === 0) {
      at[i] = pointerTo(way, layer);
      reached.push(i);
    } else if (at[i]! < 0 && layerOf(at[i]!) === layer) {
      contested.push(i);
      contested.push(way);
    }
  };
  for (const i of flat) {
    const ways = levelNeighbours(ground, i, level);
    for (let k = 0; k < ways; k++) {
      const way = level[k]!;
      if (at[way]! < 0 && layerOf(at[way]!) === 0) reach(i, way, 1, frontier);
    }
  }
  for (let layer = 2; frontier.length > 0; layer = (layer % 3) + 1) {
    const next = new NumberList();
    for (const way of frontier.values()) {
      const ways = levelNeighbours(ground, way, level);
      for (let k = 0; k < ways; k++) reach(level[k]!, way, layer, next);
    }
    frontier = next;
  }
  return contested.values();
}

/** Makes a basin of every level top that no way leads up from. */
export function fillTops(ground: Ground, at: Int32Array, flat: Uint32Array, first: NumberList): void {
  const level = new Uint32Array(4);
  const open: number[] = [];
  for (const top of flat) {
    if (at[top] !== 0) continue;
    const basin = first.length;
    first.push(top);
    at[top] = basin;
    open.push(top);
    while (open.length > 0) {
      const ways = levelNeighbours(ground, open.pop()!, level);
      for (let k = 0; k < ways; k++) {
        const i = level[k]!;
        if (at[i] !== 0) continue;
        at[i] = basin;
        open.push(i);
      }
    }
  }
}

/**
 * Turns pixels with several equally short ways to the lowest basin among them: from the highest down and from the
 * uphill end of each plateau, so that what a way leads to is settled before it counts.
 *
 * @param first first pixel by basin: lower means earlier
 */
export function settleContests(
  distance2: Uint16Array | Uint32Array,
  at: Int32Array,
  contested: Uint32Array,
  first: Uint32Array,
): void {
  const order = Uint32Array.from({ length: contested.length / 2 }, (_, k) => k);
  order.sort((j, k) => distance2[contested[2 * k]!]! - distance2[contested[2 * j]!]! || j - k);
  for (const k of order) {
    const i = contested[2 * k]!;
    const way = contested[2 * k + 1]!;
    const now = resolve(at, targetOf(at[i]!));
    if (first[resolve(at, way)]! < first[now]!) at[i] = pointerTo(way);
  }
}

/** The basin that pixel `i` leads to, with all pixels on the way put into it. */
export function resolve(at: Int32Array, i: number): number {
  let end = i;
  while (at[end]! < 0) end = targetOf(at[end]!);
  const basin = at[end]!;
  for (let step = i; at[step]! < 0; ) {
    const next = targetOf(at[step]!);
    at[step] = basin;
    step = next;
  }
  return basin;
}
