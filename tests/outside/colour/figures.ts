import type { Ink, Lab } from '../../../src/graph/inks.ts';

export interface Figures {
  mean: number;
  /** 95th percentile, linear between ranks. */
  p95: number;
  max: number;
}

export function figuresOf(values: readonly number[]): Figures {
  const sorted = values.toSorted((a, b) => a - b);
  const rank = 0.95 * (sorted.length - 1);
  const below = sorted[Math.floor(rank)]!;
  const above = sorted[Math.ceil(rank)]!;
  return {
    mean: values.reduce((sum, value) => sum + value, 0) / values.length,
    p95: below + (rank - Math.floor(rank)) * (above - below),
    max: sorted[sorted.length - 1]!,
  };
}

/** A plain translucent process ink. */
export const processInk = (id: string, lab: number[]): Ink => ({
  id,
  name: id,
  lab: lab as Lab,
  opacity: 0.005,
});
