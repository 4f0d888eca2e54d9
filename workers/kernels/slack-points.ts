import type { Plane } from './plane.ts';
import { offsetOf } from './slack.ts';

export interface SlackPointsArgs {
  /** From `slack`. */
  found: Uint16Array;
  sets: Uint16Array;
  labels: Uint32Array;
  /** Tells fill from line; null where no line prints. */
  line: Plane | null;
  width: number;
}

/** Directions across a border that are told apart: eighths of half a turn. */
export const SECTORS = 8;

/** Places of like faults: the same regions, and the same plates printing here and over there. */
export interface SlackGroups {
  /** Label here and over there. */
  here: Uint32Array;
  there: Uint32Array;
  /** Whether here (bit 0) and over there (bit 1) lie on the line. */
  onLine: Uint8Array;
  /** For every group, `SECTORS` by `SECTORS`: the place with the least drift in a direction, as a pixel index. */
  place: Uint32Array;
  /** What drifts over that place, packed as in `slack`; 0 where the group has none in this direction. */
  offset: Uint16Array;
}

export interface SlackPoints {
  groups: SlackGroups;
  /** All places in reading order: pixel index, packed offset, group. */
  at: Uint32Array;
  offset: Uint16Array;
  group: Uint32Array;
}

/** Coverage from which a pixel is line. */
const LINE = 128;

/** Gathers what `slack` found, in groups that look alike. */
export function slackPoints({ found, sets, labels, line, width }: SlackPointsArgs): SlackPoints {
  let count = 0;
  for (let i = 0; i < found.length; i++) if (found[i] !== 0) count++;
  const points = {
    at: new Uint32Array(count),
    offset: new Uint16Array(count),
    group: new Uint32Array(count),
  };
  const numbers = new Numbering();
  const ways = waysOf();
  const place: number[] = [];
  const offset: number[] = [];
  const isLine = (i: number) => (line !== null && line.data[i]! >= LINE ? 1 : 0);
  for (let i = 0, k = 0; k < count; i++) {
    const packed = found[i]!;
    if (packed === 0) continue;
    const j = i + ways.step(packed, width);
    const seen = sets[i]! | (sets[j]! << 12) | (isLine(i) << 24) | (isLine(j) << 25);
    const group = numbers.of(labels[i]!, labels[j]!, seen);
    points.at[k] = i;
    points.offset[k] = packed;
    points.group[k++] = group;
    const slot = group * SECTORS + ways.sectorOf(packed);
    const known = offset[slot];
    if (known !== undefined && known !== 0 && ways.drift2(known) <= ways.drift2(packed)) continue;
    while (offset.length < (group + 1) * SECTORS) {
      offset.push(0);
      place.push(0);
    }
    offset[slot] = packed;
    place[slot] = i;
  }
  return {
    groups: { ...numbers.groups(), place: Uint32Array.from(place), offset: Uint16Array.from(offset) },
    ...points,
  };
}

const UNKNOWN = 255;

/** Directions and lengths of offsets, each direction worked out when it is first asked for. */
function waysOf() {
  const sectors = new Uint8Array(65536).fill(UNKNOWN);
  const [near, far] = [Math.sqrt((1 + Math.SQRT1_2) / 2), Math.sqrt((1 - Math.SQRT1_2) / 2)];
  const middles = [
    [1, 0],
    [near, far],
    [Math.SQRT1_2, Math.SQRT1_2],
    [far, near],
    [0, 1],
    [-far, near],
    [-Math.SQRT1_2, Math.SQRT1_2],
    [-near, far],
  ] as const;
  const sectorOf = (packed: number): number => {
    if (sectors[packed] !== UNKNOWN) return sectors[packed]!;
    const [dx, dy] = offsetOf(packed);
    const along = middles.map(([x, y]) => Math.abs(dx * x + dy * y));
    sectors[packed] = along.indexOf(Math.max(...along));
    return sectors[packed]!;
  };
  const right = (packed: number) => (packed >> 8) - 128;
  const down = (packed: number) => (packed & 255) - 128;
  return {
    sectorOf,
    drift2: (packed: number) => right(packed) * right(packed) + down(packed) * down(packed),
    step: (packed: number, width: number) => right(packed) + down(packed) * width,
  };
}

/** Numbers triples in the order they first come: a hash table with open addressing. */
class Numbering {
  #size = 1024;
  #slots = new Int32Array(this.#size).fill(-1);
  readonly #here: number[] = [];
  readonly #there: number[] = [];
  readonly #seen: number[] = [];

  of(here: number, there: number, seen: number): number {
    let slot = this.#slotOf(here, there, seen);
    for (let k = this.#slots[slot]!; k >= 0; k = this.#slots[slot]!) {
      if (this.#here[k] === here && this.#there[k] === there && this.#seen[k] === seen) return k;
      slot = (slot + 1) & (this.#size - 1);
    }
    const number = this.#here.length;
    this.#slots[slot] = number;
    this.#here.push(here);
    this.#there.push(there);
    this.#seen.push(seen);
    if (2 * number > this.#size) this.#grow();
    return number;
  }

  groups(): Pick<SlackGroups, 'here' | 'there' | 'onLine'> {
    return {
      here: Uint32Array.from(this.#here),
      there: Uint32Array.from(this.#there),
      onLine: Uint8Array.from(this.#seen, (seen) => (seen >> 24) & 3),
    };
  }

  #slotOf(here: number, there: number, seen: number): number {
    const mixed = Math.imul(here, 0x9e3779b1) ^ Math.imul(there, 0x85ebca6b) ^ Math.imul(seen, 0xc2b2ae35);
    return (mixed ^ (mixed >>> 15)) & (this.#size - 1);
  }

  #grow(): void {
    this.#size *= 2;
    this.#slots = new Int32Array(this.#size).fill(-1);
    for (let k = 0; k < this.#here.length; k++) {
      let slot = this.#slotOf(this.#here[k]!, this.#there[k]!, this.#seen[k]!);
      while (this.#slots[slot]! >= 0) slot = (slot + 1) & (this.#size - 1);
      this.#slots[slot] = k;
    }
  }
}
