import type { Plane } from '../../../workers/kernels/plane.ts';
import { percentOf } from './pictures.ts';

/** How alike two planes wander about their means, -1..1. */
export function likeness(a: Plane, b: Plane): number {
  const [meanA, meanB] = [a, b].map(({ data }) => percentOf(data) * 2.55);
  let product = 0;
  let squareA = 0;
  let squareB = 0;
  a.data.forEach((value, i) => {
    const [u, v] = [value - meanA!, b.data[i]! - meanB!];
    product += u * v;
    squareA += u * u;
    squareB += v * v;
  });
  return product / Math.sqrt(squareA * squareB);
}
