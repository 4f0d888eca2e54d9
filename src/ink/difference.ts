import { differenceCiede2000, modeLab65, useMode as registerMode } from 'culori/fn';
import type { Lab } from '../graph/inks.ts';

registerMode(modeLab65);
const ciede2000 = differenceCiede2000();

/** CIEDE2000 converts to the mode it computes in; labelled so, the three numbers pass as they are. */
const labelled = ([l, a, b]: Readonly<Lab>) => ({ mode: 'lab65' as const, l, a, b });

/**
 * CIEDE2000 colour difference of two Lab of one white, kL = kC = kH = 1.
 *
 * Source: G. Sharma, W. Wu, E. N. Dalal, Color Research & Application 30 (2005) 21-30.
 */
export const differenceOf = (one: Readonly<Lab>, other: Readonly<Lab>): number =>
  ciede2000(labelled(one), labelled(other));
