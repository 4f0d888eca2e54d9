import type { Complaint } from '../graph/complaint.ts';
import { type Shortfall, type SlackBorder, type SlackReport, shortfallOf, type Tolerance } from './slack.ts';
import { slackSentence } from './strings.ts';

/** So many faults of either kind are told one by one. */
const MOST_TOLD = 100;

/** A border that does not hold on a press. */
export interface FailingBorder extends Shortfall {
  border: SlackBorder;
}

/** The borders that do not hold on a press, those that show most first. */
export function failingBorders({ borders }: SlackReport, tolerance: Tolerance): FailingBorder[] {
  return borders
    .flatMap((border): FailingBorder[] => {
      const short = shortfallOf(border, tolerance);
      return short ? [{ border, ...short }] : [];
    })
    .sort((a, b) => b.shortMm - a.shortMm);
}

/**
 * What a printer would complain of: a warning for each border where paper shows within the tolerance, a note for
 * each where another overprint does; the measure is the width in mm that shows. Of many like ones the worst.
 */
export function slackFaults(report: SlackReport, tolerance: Tolerance): Complaint[] {
  const failing = failingBorders(report, tolerance);
  return (['paper', 'overprint'] as const).flatMap((shows) =>
    failing
      .filter(({ border }) => border.shows === shows)
      .slice(0, MOST_TOLD)
      .map(
        ({ border, way, driftMm, shortMm }): Complaint => ({
          code: 'register-slack',
          severity: shows === 'paper' ? 'warning' : 'note',
          message: slackSentence(border, way.slackMm, driftMm),
          placeMm: [way.placeMm[0], way.placeMm[1]],
          measure: Math.round(shortMm * 1000) / 1000,
        }),
      ),
  );
}

/** The worst border of every plate where paper shows, with how many there are: for lists that hold other faults too. */
export function slackByPlate(report: SlackReport, tolerance: Tolerance): Complaint[] {
  const failing = failingBorders(report, tolerance).filter(({ border }) => border.shows === 'paper');
  const plates = [...new Set(failing.map(({ border }) => border.plate))];
  return plates.map((plate): Complaint => {
    const mine = failing.filter(({ border }) => border.plate === plate);
    const { border, way, driftMm, shortMm } = mine[0]!;
    const more = mine.length === 1 ? '' : ` So it is at ${mine.length} borders; Register slack lists them.`;
    return {
      code: 'register-slack',
      severity: 'warning',
      message: `${slackSentence(border, way.slackMm, driftMm)}${more}`,
      placeMm: [way.placeMm[0], way.placeMm[1]],
      measure: Math.round(shortMm * 1000) / 1000,
      plate,
    };
  });
}
