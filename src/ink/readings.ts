import { type Lab, type Measurement, READINGS } from '../graph/inks.ts';
import { xyzOfLab } from './lab.ts';
import { keyOfInks } from './measured.ts';
import { type Swatch, swatchOf } from './swatch.ts';

/** What was read of the solids of some inks on each other. */
export interface Reading {
  inks: readonly string[];
  lab: Lab;
  swatch: Swatch;
}

export interface Readings {
  /** The readings that take the place of predictions, by `keyOfInks`. */
  counting: Map<string, Reading>;
  /** Photos and judgements by eye that nobody accepted, of sets without a reading that counts. */
  hints: Measurement[];
}

const trustOf = ({ how = 'instrument' }: Measurement): number => READINGS.indexOf(how);

/** A photo or an eye is worse than the model: it counts only once accepted. */
const counts = (reading: Measurement): boolean =>
  trustOf(reading) <= READINGS.indexOf('scan') || reading.accepted === true;

const meanOf = (labs: readonly Lab[]): Lab =>
  [0, 1, 2].map((axis) => labs.reduce((sum, lab) => sum + lab[axis]!, 0) / labs.length) as Lab;

/**
 * Which of several readings count. Of the readings of one set the most trustworthy kind wins; several of that kind
 * are patches of one print and count with their mean Lab.
 *
 * Throws a RangeError for an ink that is not in the print.
 */
export function readingsOf(measured: readonly Measurement[], ids: readonly string[]): Readings {
  const sets = new Map<string, Measurement[]>();
  for (const reading of measured) {
    const stranger = reading.inks.find((id) => !ids.includes(id));
    if (stranger !== undefined) {
      throw new RangeError(`measured: there is no ink ${stranger} in this print; it has ${ids.join(', ')}`);
    }
    const key = keyOfInks(reading.inks);
    sets.set(key, [...(sets.get(key) ?? []), reading]);
  }
  const counting = new Map<string, Reading>();
  const hints: Measurement[] = [];
  for (const [key, readings] of sets) {
    const counted = readings.filter(counts);
    if (counted.length === 0) {
      hints.push(...readings);
      continue;
    }
    const best = Math.min(...counted.map(trustOf));
    const lab = meanOf(counted.filter((reading) => trustOf(reading) === best).map((reading) => reading.lab));
    counting.set(key, { inks: readings[0]!.inks, lab, swatch: swatchOf(xyzOfLab(lab)) });
  }
  return { counting, hints };
}

/** The plates that inks of a reading lie on, as a set of bits; null when the print has too few plates of an ink. */
export function platesOf(inks: readonly string[], ids: readonly string[]): number | null {
  let set = 0;
  for (const id of inks) {
    const plate = ids.findIndex((other, i) => other === id && !(set & (1 << i)));
    if (plate < 0) return null;
    set |= 1 << plate;
  }
  return set;
}
