import type { Measures } from './layout.ts';

/** How large tickets are drawn when the wiring is unfolded, px; Flow.module.css follows these. */
export const MEASURES: Measures = { width: 212, height: 104, aside: 32, below: 64, lane: 30 };

/** Distance of a port from the left edge of its ticket: ports stand evenly. */
export function portX(index: number, count: number): number {
  return (MEASURES.width * (index + 1)) / (count + 1);
}
