import { NO_CHANGE } from './to-change.ts';

export interface SlackArgs {
  /** From `plateSets`. */
  sets: Uint16Array;
  /** From `setEdges`. */
  edges: Uint8Array;
  width: number;
  height: number;
  /** Index of the plate that drifts. */
  plate: number;
  /** From `toChange` of this plate, with a limit of at least `reach`. */
  toChange: Uint8Array;
  /** How far to look, px, at most `MOST_REACH`. */
  reach: number;
  /** Receives, packed by `offsetOf`, what lies over a place when a fault first shows there; 0 where none does. */
  out: Uint16Array;
}

/** Offsets of up to so many px each way fit 16 bits. */
export const MOST_REACH = 127;
const MIDDLE = 128;

/** The way from a place to what drifts over it, px. */
export function offsetOf(packed: number): [dx: number, dy: number] {
  return [(packed >> 8) - MIDDLE, (packed & 255) - MIDDLE];
}

/**
 * Where the drift of one plate first shows, for rows `from..to`: at every edge of a set of plates, the nearest place
 * where this plate turns from printing to not printing or back is what first drifts over it. It is a fault when the
 * plates that then print together do so nowhere on the straight way between the two, neither here nor there. So
 * edges that only move are none, nor is a trap that grows, nor a white line that moves.
 */
export function slack(args: SlackArgs, from: number, to: number): void {
  const { edges, width, out } = args;
  const most = args.reach * args.reach;
  const end = to * width;
  out.fill(0, from * width, end);
  for (let i = edges.indexOf(1, from * width); i >= 0 && i < end; i = edges.indexOf(1, i + 1)) {
    const y = Math.floor(i / width);
    out[i] = firstFault(args, i - y * width, y, most);
  }
}

function firstFault(args: SlackArgs, x: number, y: number, most: number): number {
  const { sets, width, plate, toChange } = args;
  const row = y * width;
  const bit = 1 << plate;
  const own = sets[row + x]! & bit;
  let best = most + 1;
  for (let dx = 0; dx * dx < best; dx++) {
    const left = x - dx < 0 ? row + x : row + x - dx;
    const right = x + dx >= width ? row + x : row + x + dx;
    const a = (sets[left]! & bit) === own ? toChange[left]! : 0;
    const b = (sets[right]! & bit) === own ? toChange[right]! : 0;
    const g = Math.min(a, b);
    if (g !== NO_CHANGE && g * g + dx * dx < best) best = g * g + dx * dx;
  }
  if (best > most) return 0;
  for (let dx = 0; dx * dx <= best; dx++) {
    const found = faultInColumn(args, x, y, -dx, best) || faultInColumn(args, x, y, dx, best);
    if (found !== 0) return found;
  }
  return 0;
}

/** The fault that comes from the column `dx` px aside, above before below; 0 where none comes from so far. */
function faultInColumn(args: SlackArgs, x: number, y: number, dx: number, d2: number): number {
  const { sets, width, plate, toChange } = args;
  if (x + dx < 0 || x + dx >= width) return 0;
  const at = y * width + x + dx;
  const alike = (((sets[at]! ^ sets[at - dx]!) >> plate) & 1) === 0;
  const g = alike ? toChange[at]! : 0;
  if (g === NO_CHANGE || g * g + dx * dx !== d2) return 0;
  if (isFault(args, x, y, dx, -g)) return ((dx + MIDDLE) << 8) | (MIDDLE - g);
  if (isFault(args, x, y, dx, g)) return ((dx + MIDDLE) << 8) | (MIDDLE + g);
  return 0;
}

/** Whether a set of plates that is nowhere on the way shows when what lies at an offset drifts over a place. */
function isFault(
  { sets, width, height, plate }: SlackArgs,
  x: number,
  y: number,
  dx: number,
  dy: number,
): boolean {
  if (y + dy < 0 || y + dy >= height) return false;
  const bit = 1 << plate;
  const own = sets[y * width + x]!;
  const there = sets[(y + dy) * width + x + dx]!;
  if (((own ^ there) & bit) === 0) return false;
  const shown = own ^ bit;
  if (shown === there) return false;
  const steps = Math.max(Math.abs(dx), Math.abs(dy));
  for (let k = 1; k < steps; k++) {
    const px = x + Math.round((dx * k) / steps);
    const py = y + Math.round((dy * k) / steps);
    if (sets[py * width + px] === shown) return false;
  }
  return true;
}
