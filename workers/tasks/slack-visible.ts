import type { Lab } from '../../src/graph/inks.ts';
import { differenceOf } from '../../src/ink/difference.ts';
import { type PrintModel, printModel } from '../../src/ink/model.ts';
import type { PlatesValue } from '../engine/values.ts';
import type { SlackPoints } from '../kernels/slack-points.ts';
import { printInput } from '../nodes/print-input.ts';

/** Colours that differ by less than this, CIEDE2000, do not stand out from what lies beside them. */
const STANDS_OUT = 5;

/** The colour that shows when a plate drifts, and how far it is from both sides. */
export interface Shown {
  lab: Lab;
  distance: number;
  paper: boolean;
}

/** What the drift of one plate does: places in groups, and what each group shows (null: nothing that stands out). */
export interface PlateFaults {
  points: SlackPoints;
  shown: (Shown | null)[];
}

/**
 * What shows at a pixel when one plate prints there what it prints at another: null where it does not stand out.
 *
 * @param least coverage from which a plate counts as printing, 0..255
 */
export function shownBy({ plates }: PlatesValue, model: PrintModel, least: number) {
  const known = new Map<string, Lab>();
  const labOf = (coverages: number[]): Lab => {
    const key = coverages.join(' ');
    const lab = known.get(key) ?? model.labOf(coverages.map((coverage) => coverage / 255));
    known.set(key, lab);
    return lab;
  };
  const printsAt = (pixel: number) => plates.map(({ coverage }) => coverage.data[pixel]!);
  return (plate: number, here: number, there: number): Shown | null => {
    const [own, other] = [printsAt(here), printsAt(there)];
    const drifted = own.map((coverage, i) => (i === plate ? other[i]! : coverage));
    const lab = labOf(drifted);
    const distance = Math.min(differenceOf(lab, labOf(own)), differenceOf(lab, labOf(other)));
    if (distance < STANDS_OUT) return null;
    return { lab, distance, paper: drifted.every((coverage) => coverage < least) };
  };
}

/** The colours of a print on its paper, of plates as they are. */
export function modelOf(plates: PlatesValue, paper: Parameters<typeof printModel>[0]['paper']): PrintModel {
  return printModel(printInput(plates, paper));
}
