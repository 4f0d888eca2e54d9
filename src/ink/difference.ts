import type { Lab } from '../graph/inks.ts';
import { ciede2000 } from './ciede2000.ts';

/** CIEDE2000 of two Lab of one white, see `ciede2000`. */
export const differenceOf = ([l1, a1, b1]: Readonly<Lab>, [l2, a2, b2]: Readonly<Lab>): number =>
  ciede2000(l1, a1, b1, l2, a2, b2);
