/**
 * How much of a wave is left when every pixel shows its mean, 0..1, by the first terms of the series of sin x / x;
 * below two pixels a period it fades out before it can alias.
 */
export function seenOf(pxAPeriod: number): number {
  const square = pxAPeriod * pxAPeriod;
  const mean = 1 - 1.645 / square + 0.81 / (square * square);
  if (pxAPeriod >= 2) return mean;
  return Math.max(0, (pxAPeriod - 1.3) / 0.7) * SEEN_AT_TWO;
}

const SEEN_AT_TWO = 1 - 1.645 / 4 + 0.81 / 16;
