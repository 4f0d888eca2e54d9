import type { LayoutCost } from './layout-cost.ts';

/** Tries of a layout for every class; more find little more. */
const TRIES_A_CLASS = 1000;
const LEAST_TRIES = 40_000;
const MOST_TRIES = 600_000;
const HOT = 0.05;
/** The temperature falls to this share in every step, down to a thousandth. */
const COOLING = 0.9;
const STEPS = 64;

/**
 * Betters a layout by simulated annealing: single classes take other colours, or swap theirs.
 *
 * Source: S. Kirkpatrick, C. D. Gelatt, M. P. Vecchi, Science 220 (1983) 671-680.
 *
 * @param movable places of the classes that may change
 * @param free colours that may be chosen are 0..free-1
 */
export function anneal(
  cost: LayoutCost,
  movable: readonly number[],
  free: number,
  chance: () => number,
): void {
  if (movable.length === 0 || free < 2) return;
  const tries = Math.min(MOST_TRIES, Math.max(LEAST_TRIES, movable.length * TRIES_A_CLASS));
  let heat = HOT;
  for (let step = 0; step <= STEPS; step++) {
    for (let i = 0; i < tries / STEPS; i++) {
      const each = movable[Math.floor(chance() * movable.length)]!;
      const to = Math.floor(chance() * free);
      const change = cost.change(each, to);
      if (change <= 0 || chance() < boltzmann(change / heat)) cost.move(each, to);
    }
    heat *= COOLING;
  }
}

/** A rational stand-in for exp(-x), falling from 1 to 0: the same in every engine. */
function boltzmann(x: number): number {
  const half = 1 + x / 8;
  const fourth = half * half * half * half;
  return 1 / (fourth * fourth);
}

/** Takes every move that still betters a layout, until none does or it was gone through so often. */
export function settle(cost: LayoutCost, movable: readonly number[], free: number): void {
  for (let round = 0; round < 20; round++) {
    let moved = false;
    for (const each of movable)
      for (let to = 0; to < free; to++) {
        if (cost.change(each, to) >= -1e-12) continue;
        cost.move(each, to);
        moved = true;
      }
    if (!moved) return;
  }
}
