import type { SlackReport, Tolerance } from './slack.ts';
import { type FailingBorder, failingBorders } from './slack-faults.ts';

/** The least change that lets a border hold; what is null would not help. */
export interface Mend {
  fault: FailingBorder;
  /** Width of a trap at this border. */
  trapMm: number | null;
  /** How far fills must reach under the line (Key line). */
  insetMm: number | null;
  /** How much heavier the line must be on both edges (Clean line). */
  heavierMm: number | null;
}

/** Clean line makes a line heavier by at most so much. */
const MOST_HEAVIER = 0.5;
/** Trap and Key line reach at most so far. */
const MOST_REACH = 2;

/**
 * What mends each border that does not hold: between fills a trap, or a line that is so much heavier; beside the
 * line, fills that reach farther under it. Widths are rounded up to whole pixels, since plates consist of them.
 */
export function mendsOf(report: SlackReport, tolerance: Tolerance): Mend[] {
  const up = (mm: number) =>
    Math.ceil((Math.ceil(mm / report.pixelMm - 1e-6) * report.pixelMm - 1e-9) * 1000) / 1000;
  const held = (mm: number, most: number) => (mm <= most ? mm : null);
  return failingBorders(report, tolerance).map((fault) => {
    const { against, shows } = fault.border;
    const reach = held(up(fault.driftMm), MOST_REACH);
    return {
      fault,
      trapMm: against === 'fill' ? reach : null,
      insetMm: against === 'line' && shows === 'paper' ? reach : null,
      heavierMm: against === 'fill' && shows === 'paper' ? held(up(fault.shortMm), MOST_HEAVIER) : null,
    };
  });
}

/** One width each for trap and inset that mends all borders where paper shows; null where none needs it. */
export function mendForAll(mends: readonly Mend[]): { trapMm: number | null; insetMm: number | null } {
  const most = (key: 'trapMm' | 'insetMm') => {
    const widths = mends.flatMap((mend) =>
      mend.fault.border.shows === 'paper' && mend[key] !== null ? [mend[key]] : [],
    );
    return widths.length > 0 ? Math.max(...widths) : null;
  };
  return { trapMm: most('trapMm'), insetMm: most('insetMm') };
}
