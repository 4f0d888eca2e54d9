import type { Complaint } from '../../graph/complaint.ts';
import type { Press } from '../../graph/press.ts';
import { figureOf } from '../profiles.ts';

/** Runs of line, or of paper between ink, that are thinner than a press holds. */
export interface ThinRuns {
  plate: string;
  what: 'positive' | 'reverse';
  /** Of the thinnest. */
  thinnestMm: number;
  /** All of them, one behind the other. */
  lengthMm: number;
  count: number;
  /** On the longest. */
  placeMm: [number, number];
}

export function thinFault(runs: ThinRuns, press: Press): Complaint[] {
  const least = figureOf(press, runs.what === 'positive' ? 'leastPositiveMm' : 'leastReverseMm');
  if (least === null || runs.count === 0) return [];
  const { plate, thinnestMm, lengthMm, count, placeMm } = runs;
  const what = runs.what === 'positive' ? 'Lines' : 'Gaps between ink';
  const remedy =
    runs.what === 'positive'
      ? 'thicken the line in Clean line, or fatten it on this plate alone'
      : 'open them up, or let the ink run through';
  return [
    {
      code: runs.what === 'positive' ? 'line-thin' : 'reverse-thin',
      severity: 'error',
      message: `${what} on plate ${plate} go down to ${thinnestMm.toFixed(2)} mm where the press holds ${least} mm: ${lengthMm.toFixed(0)} mm of it in ${count} ${count === 1 ? 'place' : 'places'}. To mend it, ${remedy}.`,
      placeMm,
      measure: thinnestMm,
      plate,
    },
  ];
}

/** How the drawing's lines print. */
export interface LinePrint {
  /** Usual width of the drawing's lines; null where it has none. */
  widthMm: number | null;
  /** Mean tint under the middle of the lines, by plate, %. */
  tintOf: Readonly<Record<string, number>>;
}

/** A plate prints the line in full from here on, and leaves it out below the other, %. */
const FULL = 95;
const NONE = 3;

/** Fine line in more than one plate, and line screened too coarsely for its width. */
export function keyLineFaults(
  { widthMm, tintOf }: LinePrint,
  press: Press,
  rulingLpi: number | null,
): Complaint[] {
  if (widthMm === null) return [];
  const faults: Complaint[] = [];
  const printing = Object.entries(tintOf).filter(([, tint]) => tint >= FULL);
  const drift = Math.max(figureOf(press, 'toleranceAlongMm') ?? 0, figureOf(press, 'toleranceAcrossMm') ?? 0);
  if (printing.length > 1 && widthMm < 2 * drift)
    faults.push({
      code: 'fine-line-in-plates',
      severity: 'warning',
      message: `The line is ${widthMm.toFixed(2)} mm wide and prints on ${printing.length} plates (${printing.map(([plate]) => plate).join(', ')}), which drift by up to ${drift} mm: it will show double. Print it on one plate, or mark this as meant.`,
      measure: widthMm,
    });
  const ruling = rulingLpi ?? figureOf(press, 'rulingLpi');
  if (ruling === null) return faults;
  const period = 25.4 / ruling;
  for (const [plate, tint] of Object.entries(tintOf)) {
    if (tint <= NONE || tint >= FULL || widthMm >= 2.5 * period) continue;
    faults.push({
      code: 'line-screened',
      severity: 'warning',
      message: `The line prints at about ${Math.round(tint)} % on plate ${plate} and is ${widthMm.toFixed(2)} mm wide, less than two and a half dots at ${ruling} lpi: it breaks up. Print it solid, or leave it out of this plate.`,
      measure: widthMm,
      plate,
    });
  }
  return faults;
}
