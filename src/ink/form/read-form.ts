import type { Ink, Lab, Measurement } from '../../graph/inks.ts';
import { xyzOfLab } from '../lab.ts';
import type { FormLayout, Patch } from './layout.ts';

/** What was read of a printed form: Lab (D50, absolute) by patch id; patches that were not read are left out. */
export type FormReadings = Readonly<Record<string, Lab>>;

type Curve = NonNullable<Ink['curvePercent']>;

/** What a press test says of the inks of a form. */
export interface FormFindings {
  /** Solids and overprints. */
  measured: Measurement[];
  /** Film-to-print curve by ink id, where enough tints were read. */
  curves: Readonly<Record<string, Curve>>;
  /** What cannot be, as sentences; those patches are left out. */
  doubts: string[];
}

/** Fewer tints than this make no curve. */
const LEAST_TINTS = 3;
/** A solid whose tristimulus values differ less than this from the paper's has no tints to read. */
const LEAST_CONTRAST = 0.03;
/** A tint may read this much paler than the one before it, in tone value: the noise of a reading. */
const NOISE = 0.02;

/** Which plates print solid on a patch, and nothing else there; null for tints. */
function solidsOf({ tints }: Patch): number[] | null {
  const plates = tints.flatMap((tint, plate) => (tint > 0 ? [plate] : []));
  return plates.length > 0 && plates.every((plate) => tints[plate] === 1) ? plates : null;
}

/** The tint of a patch that prints one plate, and not its solid. */
function tintOn({ tints }: Patch, plate: number): number | null {
  const tint = tints[plate]!;
  const alone = tints.every((other, i) => i === plate || other === 0);
  return alone && tint > 0 && tint < 1 ? tint : null;
}

/**
 * Murray-Davies tone value on the tristimulus value that the solid changes most.
 *
 * Source: A. Murray, J. Franklin Institute 221 (1936) (from memory).
 *
 * @returns 0..1 and beyond; null where solid and paper are too much alike
 */
export function toneValue(paper: Lab, solid: Lab, tint: Lab): number | null {
  const from = xyzOfLab(paper);
  const to = xyzOfLab(solid);
  const at = xyzOfLab(tint);
  const change = from.map((value, axis) => Math.abs(value - to[axis]!) / Math.max(value, to[axis]!));
  const axis = change.indexOf(Math.max(...change));
  if (change[axis]! < LEAST_CONTRAST) return null;
  return (from[axis]! - at[axis]!) / (from[axis]! - to[axis]!);
}

function curveOf(layout: FormLayout, plate: number, readings: FormReadings, doubts: string[]): Curve | null {
  const { id } = layout.plates[plate]!;
  const solid = readings[id] ?? readings[`${id} 100`];
  if (!readings.paper || !solid) return null;
  const points: Curve = [];
  let before = 0;
  for (const patch of layout.patches) {
    const film = tintOn(patch, plate);
    const lab = readings[patch.id];
    if (film === null || !lab) continue;
    const tone = toneValue(readings.paper, solid, lab);
    if (tone === null) {
      doubts.push(`${id}: its solid is too much like the paper to read tints of it`);
      return null;
    }
    if (tone < before - NOISE || tone > 1 + NOISE) {
      doubts.push(
        `${patch.id} % reads ${Math.round(tone * 100)} %, after ${Math.round(before * 100)} %; read that patch again`,
      );
      continue;
    }
    before = Math.min(1, Math.max(before, tone));
    points.push([Math.round(film * 1000) / 10, Math.round(before * 1000) / 10]);
  }
  return points.length >= LEAST_TINTS ? points : null;
}

/**
 * Measured solids, overprints and film-to-print curves from what was read of a printed form.
 *
 * @param how the way all of it was read
 */
export function findingsOf(
  layout: FormLayout,
  readings: FormReadings,
  how: NonNullable<Measurement['how']>,
): FormFindings {
  const doubts: string[] = [];
  const measured = layout.patches.flatMap((patch): Measurement[] => {
    const lab = readings[patch.id];
    const solids = solidsOf(patch);
    if (!lab || !solids || patch.id.endsWith(' 100')) return [];
    return [{ inks: solids.map((plate) => layout.plates[plate]!.ink), lab, how }];
  });
  const curves: Record<string, Curve> = {};
  layout.plates.forEach(({ ink }, plate) => {
    const curve = curveOf(layout, plate, readings, doubts);
    if (curve) curves[ink] = curve;
  });
  return { measured, curves, doubts };
}
