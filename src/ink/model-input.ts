import type { Ink, Measurement, Stock, TakeUp } from '../graph/inks.ts';
import { canonicalJson } from '../graph/keys.ts';

/** How a set of inks prints, whatever the paper. */
export interface Printing {
  /** Take-up on an ink of an earlier pass, 0..1. Default 0.95. */
  takeUp?: number | undefined;
  /** Where two passes differ from that; of a pass on itself, where it differs from 0.74 wet on wet. */
  takeUps?: readonly TakeUp[] | undefined;
  /** Solids and overprints read from this print; they take the place of what would be predicted. */
  measured?: readonly Measurement[] | undefined;
  /** The stock that the inks' colours are given on. Default: the paper printed on. */
  reference?: Stock | undefined;
}

export interface PrintInput extends Printing {
  paper: Stock;
  /** In print order, 1 to 12; one ink may come twice. */
  inks: readonly Ink[];
  /** The pass of each ink; inks of one pass print wet on wet. Default: each its own. */
  passes?: readonly number[] | undefined;
}

export const MOST_INKS = 12;

const within = (value: number): boolean => value >= 0 && value <= 1;

function checkCurve({ id, curvePercent = [] }: Ink): void {
  curvePercent.forEach(([film, print], i) => {
    if (!within(film / 100) || !within(print / 100)) {
      throw new RangeError(`curve of ${id}: point ${i + 1} leaves 0 to 100 %`);
    }
    if (i > 0 && film <= curvePercent[i - 1]![0]) {
      throw new RangeError(`curve of ${id}: film values must rise; point ${i + 1} does not`);
    }
  });
}

function checkInk(ink: Ink, first: Ink): void {
  if (!within(ink.opacity))
    throw new RangeError(`opacity of ${ink.id} is a share from 0 to 1, not ${ink.opacity}`);
  checkCurve(ink);
  if (ink !== first && canonicalJson(ink) !== canonicalJson(first)) {
    throw new RangeError(`two inks are called ${ink.id} and differ; give one another id`);
  }
}

function checkTakeUps(takeUps: readonly TakeUp[]): void {
  const seen = new Set<string>();
  for (const { below, above, takeUp } of takeUps) {
    const which = `take-up of pass ${above} on pass ${below}`;
    if (!within(takeUp)) throw new RangeError(`${which} is a share from 0 to 1, not ${takeUp}`);
    if (seen.has(which)) throw new RangeError(`${which} is given twice; keep one`);
    seen.add(which);
  }
}

/** Throws a RangeError that says what to change when a print cannot be modelled. */
export function checkPrint({ inks, passes, takeUp, takeUps = [] }: PrintInput): void {
  if (inks.length < 1 || inks.length > MOST_INKS) {
    throw new RangeError(`a print has 1 to ${MOST_INKS} inks, not ${inks.length}`);
  }
  if (passes && passes.length !== inks.length) {
    throw new RangeError(`give one pass for each of ${inks.length} inks, not ${passes.length}`);
  }
  if (takeUp !== undefined && !within(takeUp)) {
    throw new RangeError(`take-up is a share from 0 to 1, not ${takeUp}`);
  }
  checkTakeUps(takeUps);
  for (const ink of inks) checkInk(ink, inks.find(({ id }) => id === ink.id)!);
}

/** Throws a RangeError unless `tints` holds one share from 0 to 1 for each ink. */
export function checkTints(tints: ArrayLike<number>, count: number): void {
  if (tints.length !== count) {
    throw new RangeError(`give one tint for each of ${count} inks, not ${tints.length}`);
  }
  for (let ink = 0; ink < count; ink++) {
    if (!within(tints[ink]!)) {
      throw new RangeError(`tint ${ink + 1} is ${tints[ink]}: give a share from 0 to 1`);
    }
  }
}
