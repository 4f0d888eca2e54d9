import type { Viewport } from '@xyflow/react';

/** Room that is left round what is brought into view, px. */
const MARGIN = 28;

interface Extent {
  from: number;
  to: number;
}

/** How far something must move to lie within bounds; 0 where it does, its start first where it is too large. */
export function shiftInto(part: Extent, bounds: Extent): number {
  if (part.from < bounds.from + MARGIN) return bounds.from + MARGIN - part.from;
  const over = part.to - (bounds.to - MARGIN);
  return over > 0 ? -Math.min(over, part.from - bounds.from - MARGIN) : 0;
}

/** The part of a flow that this needs. */
interface Movable {
  getViewport(): Viewport;
  setViewport(viewport: Viewport): unknown;
}

/** A rectangle within the flow's box, px on screen. */
export interface Place {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** Pans a flow just as far as a place in its box needs to be seen whole. */
export function bringIntoView(flow: Movable, box: HTMLElement, place: Place): void {
  const { left, top, width, height } = place;
  const x = shiftInto({ from: left, to: left + width }, { from: 0, to: box.clientWidth });
  const y = shiftInto({ from: top, to: top + height }, { from: 0, to: box.clientHeight });
  if (x === 0 && y === 0) return;
  const at = flow.getViewport();
  flow.setViewport({ ...at, x: at.x + x, y: at.y + y });
}

/** Where an element stands in the box. */
export function placeOf(element: Element, box: HTMLElement): Place {
  const { left, top, width, height } = element.getBoundingClientRect();
  const from = box.getBoundingClientRect();
  return { left: left - from.left, top: top - from.top, width, height };
}
