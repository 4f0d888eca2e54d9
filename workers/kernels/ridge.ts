import { AROUND } from './simple-points.ts';

/** Steps in a plane to the eight pixels around one. */
export function ringSteps(width: number): number[] {
  return AROUND.map(([dx, dy]) => dy * width + dx);
}

/** Not on the middle of anything. */
export const NO_RIDGE = 0;
/** On a middle two pixels across: the line is two depths wide. */
export const BLUNT = 1;
/** On a middle one pixel across: the line is two depths wide less a pixel. */
export const SHARP = 2;

/** Whether pixel `i` of a depth plane, not on its border, lies on the middle of a line. */
export function ridgeAt(data: Uint8Array, i: number, steps: readonly number[]): number {
  const own = data[i]!;
  if (own === 0 || own === 255) return NO_RIDGE;
  let lower = 0;
  for (let bit = 0; bit < 8; bit++) {
    const other = data[i + steps[bit]!]!;
    if (other > own) return NO_RIDGE;
    if (other < own) lower |= 1 << bit;
  }
  if (lower === 0) return NO_RIDGE;
  return (lower & (lower >> 4)) !== 0 ? SHARP : BLUNT;
}
