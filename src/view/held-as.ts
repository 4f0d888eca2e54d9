import type { HandPoint } from './gesture.ts';

/** What a pointer event tells of the hand. */
export type HandEvent = Pick<PointerEvent, 'pointerType' | 'pressure' | 'tiltX' | 'tiltY'>;

/** What a mouse, and a finger on a screen that feels no pressure, count as. */
const HALF = 0.5;

/** How a pen, finger or mouse is held. A finger that is said to press not at all, or wholly, was not felt. */
export function heldAs({
  pointerType,
  pressure,
  tiltX,
  tiltY,
}: HandEvent): Required<Pick<HandPoint, 'pressure' | 'tiltDeg'>> {
  if (pointerType === 'pen') return { pressure, tiltDeg: Math.max(Math.abs(tiltX), Math.abs(tiltY)) };
  const felt = pointerType === 'touch' && pressure > 0 && pressure < 1;
  return { pressure: felt ? pressure : HALF, tiltDeg: 0 };
}

/** From this tilt on a pen lies flat, degrees; upright up to the other. */
const FLAT_DEG = 65;
const UPRIGHT_DEG = 30;

/** The share of its full width that a stroke has under the hand, 0..1: a pen laid flat marks twice as broad. */
export function pressOf({ pressure = HALF, tiltDeg = 0 }: HandPoint): number {
  const flat = Math.min(1, Math.max(0, (tiltDeg - UPRIGHT_DEG) / (FLAT_DEG - UPRIGHT_DEG)));
  return Math.min(1, Math.max(0, pressure * (1 + flat)));
}
