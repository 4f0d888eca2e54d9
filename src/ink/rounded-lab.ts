import type { Lab } from '../graph/inks.ts';

/** A Lab to two decimals, as files and tables show it: far below what an eye or an instrument tells apart. */
export const roundedLab = (lab: Readonly<Lab>): Lab =>
  lab.map((value) => Math.round(value * 100) / 100 + 0) as Lab;
