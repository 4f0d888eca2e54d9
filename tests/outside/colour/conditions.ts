import type { Lab, Stock, Surface } from '../../../src/graph/inks.ts';
import { type PrintModel, printModel } from '../../../src/ink/model.ts';
import type { PrintInput } from '../../../src/ink/model-input.ts';
import { processInk } from './figures.ts';
import data from './print-conditions.json';

export type Patch = keyof (typeof data.sets)[number]['lab'];
export const OVERPRINTS: readonly Patch[] = ['CM', 'CY', 'MY', 'CMY'];
const INKS = ['C', 'M', 'Y'] as const;

export interface Condition {
  id: string;
  paper: Stock;
  lab: Record<Patch, Lab>;
}

const conditions: Condition[] = data.sets.map((set) => ({
  id: set.id,
  paper: { lab: set.lab.paper as Lab, surface: set.stockClass as Surface },
  lab: set.lab as unknown as Record<Patch, Lab>,
}));

export function conditionOf(id: string): Condition {
  const found = conditions.find((condition) => condition.id === id);
  if (!found) throw new Error(`no print condition ${id}`);
  return found;
}

/** The eight conditions that the constants of the model were fitted on. */
export const FITTED = [
  'FOGRA39L',
  'TR006',
  'FOGRA28L',
  'FOGRA40L',
  'FOGRA29L',
  'FOGRA47L',
  'FOGRA30L',
  'IFRA26S',
].map(conditionOf);

/** The two that no constant but the surface classes was fitted on. */
export const HELD_OUT = ['FOGRA45L', 'TR002'].map(conditionOf);

/** Wet on wet in one pass, from the measured solids and paper alone unless `extra` says more. */
export function pressModel({ paper, lab }: Condition, extra: Partial<PrintInput> = {}): PrintModel {
  const inks = INKS.map((id) => processInk(id, lab[id]));
  return printModel({ paper, inks, passes: [1, 1, 1], ...extra });
}

/** Overprints with black; black prints first, and nothing was fitted on them. */
export const BLACK_OVERPRINTS: readonly Patch[] = ['CK', 'MK', 'YK', 'CMK', 'CYK', 'MYK', 'CMYK'];

/** Four inks wet on wet, black first. */
export function blackModel({ paper, lab }: Condition): PrintModel {
  const inks = (['K', ...INKS] as const).map((id) => processInk(id, lab[id]));
  return printModel({ paper, inks, passes: [1, 1, 1, 1] });
}

/** Which primary of a `blackModel` a patch is. */
export const blackSetOf = (patch: Patch): number =>
  ['K', ...INKS].reduce((set, ink, i) => set + (patch.includes(ink) ? 1 << i : 0), 0);

/** Which primary of a `pressModel` a patch is. */
export const setOf = (patch: Patch): number =>
  INKS.reduce((set, ink, i) => set + (patch.includes(ink) ? 1 << i : 0), 0);

/** Measured overprints as the model takes them. */
export const measuredOf = ({ lab }: Condition, patches: readonly Patch[]) =>
  patches.map((patch) => ({ inks: [...patch], lab: lab[patch] }));
