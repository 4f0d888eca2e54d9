import type { Point } from './layout.ts';

/**
 * An SVG path through points from top to bottom that leaves and enters each upright, moved aside by `aside`; strands
 * moved by different amounts stay apart where they run sideways, too.
 */
export function strandPath(points: readonly Point[], aside: number): string {
  const [start, ...rest] = points;
  if (!start) return '';
  let at = start;
  const bends = rest.map((next) => {
    const inward = Math.sign(at.x - next.x) * aside;
    const middle = (at.y + next.y) / 2 + inward;
    const bend = `C${at.x + aside} ${middle} ${next.x + aside} ${middle} ${next.x + aside} ${next.y}`;
    at = next;
    return bend;
  });
  return `M${start.x + aside} ${start.y}${bends.join('')}`;
}

/** The middle of the last bend of a wire, just before its input. */
export function lastMiddle(points: readonly Point[]): Point {
  const end = points.at(-1)!;
  const before = points.at(-2) ?? end;
  return { x: (before.x + end.x) / 2, y: (before.y + end.y) / 2 };
}
