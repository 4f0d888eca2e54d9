import type { Lab } from '../graph/inks.ts';
import { differenceOf } from './difference.ts';
import { xyzOfLab } from './lab.ts';

export interface Contrast {
  /** 1..21, as WCAG counts it: (lighter + 0.05) / (darker + 0.05) of the luminances Y. */
  ratio: number;
  /** CIEDE2000. */
  distance: number;
}

const FLARE = 0.05;

/**
 * How far apart two printed colours stand.
 *
 * Source of the ratio: W3C, Web Content Accessibility Guidelines 2.2, contrast ratio.
 */
export function contrastOf(one: Readonly<Lab>, other: Readonly<Lab>): Contrast {
  const [light, dark] = [xyzOfLab(one)[1], xyzOfLab(other)[1]].sort((a, b) => b - a) as [number, number];
  return { ratio: (light + FLARE) / (dark + FLARE), distance: differenceOf(one, other) };
}
