import type { Lab } from '../graph/inks.ts';

/** Which recipes a search may find. Tints are shares 0..1. */
export interface SearchRules {
  /** Step between tints, 0.01..1. */
  step: number;
  /** The least and the most tint besides 0 and 1 that the press holds. */
  least: number;
  most: number;
  /** How many inks may lie on one spot. */
  mostInks: number;
  /** CIEDE2000 that a further ink must save to be worth its plate. */
  inkPenalty: number;
  /** Most of all tints together, 1 = one solid. */
  mostTotal: number;
}

export interface FoundRecipe {
  /** Share 0..1 of each plate, in print order. */
  tints: readonly number[];
  /** Predicted, D50, absolute. */
  lab: Lab;
  /** CIEDE2000 to the colour wanted. */
  distance: number;
}

export const USUAL_RULES: SearchRules = {
  step: 0.1,
  least: 0.15,
  most: 0.85,
  mostInks: 3,
  inkPenalty: 0.5,
  mostTotal: 2.4,
};
